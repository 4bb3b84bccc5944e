import { type ReactNode, useEffect, useRef } from 'react';
import { setQuery, useQueryValue } from '../../app/address.ts';
import { Caution } from '../../cautions/caution.tsx';
import { api } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { useRead } from '../../client/use-read.ts';
import { ChoiceField } from '../../fields/choice-field.tsx';
import { FlagField } from '../../fields/flag-field.tsx';
import { MoneyField } from '../../fields/money-field.tsx';
import { PriceField } from '../../fields/price-field.tsx';
import { QuantityField, ShareField } from '../../fields/quantity-field.tsx';
import { TextField } from '../../fields/text-field.tsx';
import { languageSpoken } from '../../words/language.ts';
import { chooseLanguage, languageCodes, languageName } from '../../words/languages.ts';
import { say } from '../../words/say.ts';
import { currencies, localeChoices, overheadKeys, partsMethods, recordsRegimes, unitSystems } from './setting-choices.ts';
import { type SettingGroup, settingGroups } from './setting-groups.ts';
import type { SettingProps } from './settings-tab.tsx';

/** A group of settings; the one that the finding box was asked for is brought into view with its first field. */
function Group(props: { readonly name: SettingGroup; readonly lead?: string; readonly children: ReactNode }) {
  const { name, lead, children } = props;
  const title = settingGroups[name].title;
  const [wanted] = useQueryValue('group');
  const group = useRef<HTMLElement>(null);
  useEffect(() => {
    if (wanted !== name) return;
    group.current?.scrollIntoView({ block: 'start' });
    group.current?.querySelector<HTMLElement>('input, select, textarea')?.focus({ preventScroll: true });
    setQuery({ group: undefined });
  }, [wanted, name]);
  return (
    <section className="panel form" aria-label={title} ref={group}>
      <h2>{title}</h2>
      {lead === undefined ? null : <p className="small soft">{lead}</p>}
      {children}
    </section>
  );
}

export function NameFields({ values, set }: SettingProps) {
  return (
    <Group name="farm">
      <TextField label={say('Name')} path="values.name" value={values.name} onChange={(name) => set({ name })} />
      <TextField
        label={say('Address and contact')}
        path="values.contact"
        lines={3}
        value={values.contact}
        onChange={(contact) => set({ contact })}
        hint={say('Printed at the head of lists, labels and records.')}
      />
    </Group>
  );
}

export function PlaceFields({ values, set }: SettingProps) {
  return (
    <Group name="place" lead={say('Day length, sun and frost are computed for it.')}>
      <div className="form-pair">
        <QuantityField
          label={say('Latitude')}
          path="values.latitude_deg"
          unit="deg"
          value={values.latitude_deg}
          onChange={(value) => set({ latitude_deg: value ?? undefined })}
          hint={say('North is positive')}
        />
        <QuantityField
          label={say('Longitude')}
          path="values.longitude_deg"
          unit="deg"
          value={values.longitude_deg}
          onChange={(value) => set({ longitude_deg: value ?? undefined })}
          hint={say('East is positive')}
        />
      </div>
      <div className="form-pair">
        <QuantityField
          label={say('Height above the sea')}
          path="values.elevation_m"
          unit="m"
          value={values.elevation_m}
          onChange={(value) => set({ elevation_m: value ?? undefined })}
        />
        <QuantityField
          label={say('North on the site drawing')}
          path="values.north_deg"
          unit="deg"
          value={values.north_deg}
          onChange={(value) => set({ north_deg: value ?? undefined })}
          hint={say('Clockwise from straight up')}
        />
      </div>
      <FlagField
        label={say('Near a coast')}
        value={values.coastal}
        onChange={(coastal) => set({ coastal })}
        hint={say('Changes how sun is estimated from temperature where no record of it is there.')}
      />
    </Group>
  );
}

export function UnitFields({ values, set }: SettingProps) {
  return (
    <Group name="units" lead={say('Only how figures are shown; what is kept does not change.')}>
      <ChoiceField
        label={say('Units')}
        path="values.unitSystem"
        value={values.unitSystem}
        choices={unitSystems}
        onChange={(unitSystem) => set({ unitSystem })}
        hint={say('Every field takes either: 3 ft 6 in, 90 cm, 40 gal.')}
      />
      <ChoiceField
        label={say('Numbers and dates as in')}
        path="values.language"
        value={values.language}
        choices={localeChoices()}
        onChange={(language) => set({ language })}
        hint={say('Files for other programs keep the decimal point.')}
      />
      <ChoiceField
        label={say('Language of the program')}
        value={languageSpoken().code}
        choices={['en', ...languageCodes.filter((code) => code !== 'en')].map((code) => ({
          value: code,
          text: languageName(code),
        }))}
        onChange={chooseLanguage}
        hint={say('Kept on this computer. Only English comes with the program; DEVELOPERS.md tells how to add a language.')}
      />
      <ChoiceField
        label={say('Currency')}
        path="values.currency"
        value={values.currency}
        choices={currencies}
        onChange={(currency) => set({ currency })}
        hint={say('Names the money; amounts are not converted.')}
      />
    </Group>
  );
}

export function FrostFields({ values, set }: SettingProps) {
  const field = (
    label: string,
    name: 'lastFrostEarly' | 'lastFrostMedian' | 'lastFrostLate' | 'firstFrostEarly' | 'firstFrostMedian' | 'firstFrostLate',
  ) => (
    <TextField
      label={label}
      path={`values.${name}`}
      value={values[name] ?? ''}
      placeholder={say('MM-DD')}
      onChange={(value) => set({ [name]: value.trim() === '' ? null : value.trim() })}
    />
  );
  return (
    <Group name="frost" lead={say('By hand, for a farm without a weather record. With a record the record is used.')}>
      <div className="form-three">
        {field(say('Last frost, early'), 'lastFrostEarly')}
        {field(say('middle'), 'lastFrostMedian')}
        {field(say('late'), 'lastFrostLate')}
      </div>
      <div className="form-three">
        {field(say('First frost, early'), 'firstFrostEarly')}
        {field(say('middle'), 'firstFrostMedian')}
        {field(say('late'), 'firstFrostLate')}
      </div>
    </Group>
  );
}

export function MoneyFields({ values, set }: SettingProps) {
  const reader = useReader();
  return (
    <Group name="money">
      <div className="form-pair">
        <MoneyField
          label={say('Wage for an hour')}
          path="values.wage_minor_per_h"
          value={values.wage_minor_per_h}
          onChange={(value) => set({ wage_minor_per_h: value ?? undefined })}
        />
        <ShareField
          label={say('Interest a year')}
          path="values.interest_share_per_year"
          value={values.interest_share_per_year}
          onChange={(value) => set({ interest_share_per_year: value ?? undefined })}
        />
      </div>
      <div className="form-pair">
        <PriceField
          label={say('Electricity')}
          per="kWh"
          path="values.electricity_minor_per_kWh"
          value={values.electricity_minor_per_kWh}
          onChange={(value) => set({ electricity_minor_per_kWh: value ?? undefined })}
        />
        <PriceField
          label={say('Water')}
          per={reader.system === 'us' ? '1,000 gal' : 'm³'}
          perUnits={reader.scale(1000, 'L') / 1000}
          path="values.water_minor_per_m3"
          value={values.water_minor_per_m3}
          onChange={(value) => set({ water_minor_per_m3: value ?? undefined })}
        />
      </div>
      <ChoiceField
        label={say('Parts are written off by')}
        path="values.partsMethod"
        value={values.partsMethod}
        choices={partsMethods}
        onChange={(partsMethod) => set({ partsMethod })}
      />
      <ChoiceField
        label={say('Overheads are shared by')}
        path="values.overheadKey"
        value={values.overheadKey}
        choices={overheadKeys}
        onChange={(overheadKey) => set({ overheadKey })}
      />
      <Caution id="tax-law-money" folded />
    </Group>
  );
}

export function RecordFields({ values, set }: SettingProps) {
  return (
    <Group name="records">
      <ChoiceField
        label={say('Records kept')}
        path="values.recordsRegime"
        value={values.recordsRegime}
        choices={recordsRegimes}
        onChange={(recordsRegime) => set({ recordsRegime })}
        hint={say('Which fields entries ask for. Your certifier or agency decides what binds you.')}
      />
      <FlagField
        label={say('Only inputs allowed for organic use')}
        value={values.organicOnly}
        onChange={(organicOnly) => set({ organicOnly })}
        hint={say('Blends and orders then leave out what is not marked as allowed.')}
      />
    </Group>
  );
}

/** The mix that cell trays are filled with: it becomes a need with each sowing in trays. */
function TrayMixField({ values, set }: SettingProps) {
  const materials = useRead(api.materials.list, undefined);
  const mixes = materials.state === 'ready' ? materials.data.filter((each) => each.kind === 'bulk-mix' && !each.own) : [];
  return (
    <ChoiceField
      label={say('Trays are filled with')}
      path="values.trayMixId"
      value={values.trayMixId}
      choices={mixes.map((each) => ({ value: each.id, text: each.name }))}
      onChange={(trayMixId) => set({ trayMixId })}
      hint={say('A need of Orders with each sowing in trays: cells, their usual volume, and a tenth more')}
    />
  );
}

export function MeasureFields({ values, set }: SettingProps) {
  return (
    <Group name="measures" lead={say('Doses are given in these, and loads are counted in them.')}>
      <div className="form-three">
        <QuantityField
          label={say('Bucket')}
          path="values.bucket_L"
          unit="L"
          value={values.bucket_L}
          onChange={(value) => set({ bucket_L: value ?? undefined })}
        />
        <QuantityField
          label={say('Barrow')}
          path="values.barrow_L"
          unit="L"
          value={values.barrow_L}
          onChange={(value) => set({ barrow_L: value ?? undefined })}
        />
        <QuantityField
          label={say('Can')}
          path="values.can_L"
          unit="L"
          value={values.can_L}
          onChange={(value) => set({ can_L: value ?? undefined })}
        />
      </div>
      <div className="form-pair">
        <QuantityField
          label={say('Vehicle holds')}
          path="values.vehicle_L"
          unit="bulk_L"
          value={values.vehicle_L}
          onChange={(vehicle_L) => set({ vehicle_L })}
          hint={say('Empty: not known')}
        />
        <QuantityField
          label={say('Vehicle carries')}
          path="values.vehicle_kg"
          unit="kg"
          value={values.vehicle_kg}
          onChange={(vehicle_kg) => set({ vehicle_kg })}
          hint={say('Empty: not known')}
        />
      </div>
      <TrayMixField values={values} set={set} />
    </Group>
  );
}

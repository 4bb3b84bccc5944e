import { classWhenPlanted, springWindow } from './frost-windows.ts';
import type { Finding, FindingCode, PlanBed, PlanPlanting, PlanRules } from './plan.ts';

/**
 * Frost at either end of a planting's time in the bed, by its class: too early against the last frost of spring, or still
 * to be harvested after the first frost of autumn (half-hardy: after the first hard one; hardy crops are left alone).
 * Plants under cover are left out: what the cover is worth is for the grower to say.
 */
export function frostFindings(planting: PlanPlanting, beds: ReadonlyMap<string, PlanBed>, rules: PlanRules): readonly Finding[] {
  const { crop } = planting;
  if (crop.hardiness === null) return [];
  const open = planting.spans.filter((span) => beds.get(span.bedId)?.isCovered !== true);
  const bedId = open[0]?.bedId ?? null;
  if (planting.spans.length > 0 && bedId === null) return [];
  const found: Finding[] = [];
  const say = (code: FindingCode, message: string) =>
    found.push({
      code,
      weight: 'risk',
      plantingId: planting.id,
      otherId: null,
      bedId,
      from: planting.inBed,
      to: planting.free,
      message,
    });
  const spring = rules.lastFrost !== null && planting.inBed.slice(0, 4) === rules.lastFrost.slice(0, 4);
  if (spring && rules.lastFrost !== null && planting.inBed < rules.lastFrost) {
    const hardiness = classWhenPlanted(crop.cropId, crop.hardiness, planting.raised);
    const { earliest } = springWindow(hardiness, rules.lastFrost);
    if (planting.inBed < earliest)
      say(
        'frost-spring',
        `${crop.cropName} is ${hardiness}: by the last frost of ${rules.lastFrost} it waits until ${earliest}.`,
      );
  }
  const warm = rules.warmFrom?.[crop.hardiness] ?? null;
  if (warm !== null && planting.inBed.slice(0, 4) === warm.slice(0, 4) && planting.inBed < warm)
    say('too-cool', `${crop.cropName} is ${crop.hardiness}: days are usually too cool for it to grow before ${warm}.`);
  const frost = crop.hardiness === 'hardy' ? null : crop.hardiness === 'half-hardy' ? rules.firstHardFrost : rules.firstFrost;
  if (frost !== null && planting.inBed < frost && planting.lastHarvest > frost)
    say('frost-autumn', `${crop.cropName} is ${crop.hardiness}: harvest after the first frost of ${frost} may be lost.`);
  return found;
}

import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { faultReports, framesOf, kindOf, markRunning } from '../../api/program/fault-reports.ts';
import { reportText } from '../../api/program/report-text.ts';

let data: string;
let minute = 0;
const logged: string[] = [];
const now = () => `2026-11-25T09:${String(minute % 60).padStart(2, '0')}:00`;
const reportsIn = (folder: string) => faultReports(folder, '0.1.0', now, (line) => logged.push(line));
beforeEach(() => {
  data = mkdtempSync(join(tmpdir(), 'bedwright-reports-'));
  minute = 0;
  logged.length = 0;
});
afterEach(() => rmSync(data, { recursive: true, force: true }));

const thrownBy = (run: () => unknown): unknown => {
  try {
    run();
  } catch (error) {
    return error;
  }
  throw new Error('Nothing was thrown.');
};
const everything = (): string =>
  readdirSync(join(data, 'fault-reports'))
    .map((name) => name + readFileSync(join(data, 'fault-reports', name), 'utf8'))
    .join('\n');

describe('a report of what broke', () => {
  test('names the kind of fault and each step by function, file and line, without folders', () => {
    function plantBeds(): never {
      const beds = null as unknown as { readonly count: number };
      throw new TypeError(`no beds ${beds.count}`);
    }
    reportsIn(data).add('program', thrownBy(plantBeds));
    const [report] = reportsIn(data).list();
    expect(report).toMatchObject({ at: now(), what: 'program', version: '0.1.0', kind: 'TypeError', seen: false });
    expect(report?.frames[0]).toMatch(/^plantBeds fault-reports\.test\.ts:\d+:\d+$/);
    expect(report?.frames.join(' ')).not.toMatch(/[/\\]|home|tmp/);
    expect(report === undefined ? '' : reportText(report)).toMatch(
      /^Bedwright 0\.1\.0 on .+\n2026-11-25 09:00:00: program, TypeError\n {2}plantBeds /,
    );
  });

  test('holds no word of the fault, whatever stands in it', () => {
    const secret = 'Anna Field key=c2VjcmV0';
    const around = fc.constantFrom(
      '',
      '"',
      '\n',
      '\n    at ',
      '(',
      ') ',
      ' at /home/anna/',
      ': ',
      '\n    at keep (/home/anna/x.js:1:2)\n',
      '`',
    );
    fc.assert(
      fc.property(around, around, fc.constantFrom(Error, TypeError, RangeError, SyntaxError), (before, after, Kind) => {
        const fault = new Kind(`${before}${secret}${after}`);
        const named = Object.assign(new Kind('x'), { name: secret, code: secret });
        for (const each of [fault, named, secret, { secret }]) {
          const said = JSON.stringify([kindOf(each), framesOf(each)]);
          expect(said).not.toContain('Anna');
          expect(said).not.toContain('c2VjcmV0');
          expect(said).not.toContain('/home');
        }
      }),
    );
  });

  test('is written once a run for the same fault, and the newest twelve are kept', () => {
    const reports = reportsIn(data);
    for (let n = 0; n < 40; n += 1) reports.add('promise', 'again');
    expect(reports.list()).toHaveLength(1);
    for (let n = 0; n < 20; n += 1) {
      minute += 1;
      reports.add('page', `kind-${n}`);
    }
    expect(reports.list()).toHaveLength(12);
    expect(reports.list()[0]?.kind).toBe('kind-19');
    expect(reports.list().map(({ kind }) => kind)).not.toContain('again');
  });

  test('of the same second stands beside the other', () => {
    const reports = reportsIn(data);
    reports.add('page', 'one');
    reports.add('page', 'two');
    expect(
      reports
        .list()
        .map(({ kind }) => kind)
        .sort(),
    ).toEqual(['one', 'two']);
  });

  test('is seen, then deleted; nothing but a report can be deleted', () => {
    const reports = reportsIn(data);
    reports.add('helper', 'GPU-crashed');
    writeFileSync(join(data, 'keep.txt'), 'mine');
    reports.see();
    const [report] = reports.list();
    expect(report?.seen).toBe(true);
    for (const name of ['../keep.txt', 'keep.txt', '', '..']) expect(reports.remove(name), name).toBe(false);
    expect(reports.remove(report?.name ?? '')).toBe(true);
    expect(reports.list()).toEqual([]);
    expect(readFileSync(join(data, 'keep.txt'), 'utf8')).toBe('mine');
  });

  test('that cannot be written or read breaks nothing more', () => {
    const file = join(data, 'file');
    writeFileSync(file, '');
    reportsIn(join(file, 'below')).add('program', new Error('x'));
    expect(logged.join()).toMatch(/no report could be written/);
    mkdirSync(join(data, 'fault-reports'));
    writeFileSync(join(data, 'fault-reports', '2026-11-25T09-00-00 page.json'), '{"at":');
    expect(reportsIn(data).list()).toEqual([]);
    expect(logged.join()).toMatch(/could not be read: SyntaxError/);
  });
});

describe('the mark that the program runs', () => {
  test('left by a process that is no more is reported at the next start; one in order leaves none', () => {
    const GONE = 2 ** 22 + 1;
    writeFileSync(join(data, `running-${GONE}`), '');
    const end = markRunning(data, reportsIn(data), (line) => logged.push(line));
    expect(reportsIn(data).list()).toMatchObject([{ what: 'ended', kind: 'unfinished', frames: [] }]);
    expect(readdirSync(data)).toContain(`running-${process.pid}`);
    expect(readdirSync(data)).not.toContain(`running-${GONE}`);
    end();
    markRunning(data, reportsIn(data), (line) => logged.push(line))();
    expect(reportsIn(data).list()).toHaveLength(1);
    expect(everything()).not.toContain(data);
  });
  test('of another program that still runs is left alone', () => {
    writeFileSync(join(data, 'running-1'), '');
    markRunning(data, reportsIn(data), (line) => logged.push(line))();
    expect(reportsIn(data).list()).toEqual([]);
    expect(readdirSync(data)).toContain('running-1');
  });
});

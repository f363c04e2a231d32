/** The unit in docs/deploying.md, held against systemd itself where it is installed. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';

const folder = mkdtempSync(join(tmpdir(), 'polewise-unit-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const documented = /```\n(\[Unit\][\s\S]*?)```/.exec(readFileSync('docs/deploying.md', 'utf8'))?.[1] ?? '';
/** With a program that is there in place of the one that it starts. */
const unit = documented.replace('/usr/bin/polewise', process.execPath);

/** What systemd-analyze(1) has against it. */
function against(text: string): string {
  const file = join(folder, 'polewise.service');
  writeFileSync(file, text);
  const { stdout, stderr, error } = spawnSync('systemd-analyze', ['verify', file], { encoding: 'utf8' });
  if (error) throw error;
  return stdout + stderr;
}

const isThere = spawnSync('systemd-analyze', ['--version']).status === 0;

describe('the unit for systemd', () => {
  it('starts the server, keeps its data, and starts it again however often that is needed', () => {
    // systemd.service(5), systemd.unit(5), systemd.exec(5).
    expect(unit).toContain(`ExecStart=${process.execPath} serve --data /var/lib/polewise`);
    expect(unit).toContain('StateDirectory=polewise');
    expect(unit).toContain('Restart=always');
    expect(unit.slice(0, unit.indexOf('[Service]'))).toContain('StartLimitIntervalSec=0');
  });

  it.skipIf(!isThere)('is one that systemd has nothing against', () => {
    expect(against(unit)).toBe('');
    expect(against(unit.replace('Restart=always', 'Restart=ever'))).toContain('restart specifier');
  });
});

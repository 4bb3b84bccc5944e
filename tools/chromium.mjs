// One Chromium for every test that draws: named by CHROMIUM, on the PATH, Playwright's own, or installed here.
import { spawnSync } from 'node:child_process';
import { accessSync, constants, existsSync, readFileSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { environment, nodePath, root } from './node-runtime.mjs';

function onPath(name) {
  for (const folder of (process.env.PATH ?? '').split(delimiter)) {
    const path = join(folder, name);
    try {
      accessSync(path, constants.X_OK);
      return path;
    } catch {}
  }
  return null;
}

const systemChromium = () => ['chromium', 'chromium-browser', 'google-chrome'].map(onPath).find((path) => path !== null) ?? null;

function playwrightsOwn() {
  const cli = join(root, 'node_modules', 'playwright', 'cli.js');
  const where = `import('playwright').then(({ chromium }) => process.stdout.write(chromium.executablePath()))`;
  const ask = () => {
    const said = spawnSync(nodePath(), ['-e', where], { cwd: root, env: environment(), encoding: 'utf8' }).stdout.trim();
    return said !== '' && existsSync(said) ? said : null;
  };
  const there = ask();
  if (there !== null) return there;
  spawnSync(nodePath(), [cli, 'install', 'chromium'], { cwd: root, env: environment(), stdio: 'ignore', timeout: 300_000 });
  return ask();
}

function debians() {
  const isDebian = existsSync('/etc/os-release') && /ID(_LIKE)?=.*debian/.test(readFileSync('/etc/os-release', 'utf8'));
  if (!isDebian || process.getuid?.() !== 0) return null;
  console.log('Installing Chromium from the system’s packages …');
  const quiet = { stdio: 'ignore', env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' } };
  spawnSync('apt-get', ['update'], quiet);
  spawnSync('apt-get', ['install', '-y', 'chromium'], quiet);
  return systemChromium();
}

export async function chromiumPath() {
  const named = process.env.CHROMIUM;
  if (named && existsSync(named)) return named;
  const path = systemChromium() ?? playwrightsOwn() ?? debians();
  if (path === null) {
    console.error(
      'No Chromium could be found or installed, so nothing that is drawn can be tested. Install one, or name it in CHROMIUM.',
    );
  }
  return path;
}

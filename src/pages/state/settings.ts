/** Settings as the page applies them: theme and motion on the root element, sums as text. */
import type { Book } from '../../machine/index.ts';
import { loadSettings, type Settings, saveSettings } from '../../storage/settings.ts';
import { Observable } from './observable.ts';

export const settings = new Observable<Settings>(loadSettings());

const media = (query: string): boolean => matchMedia(query).matches;

export const isDark = (s: Settings): boolean =>
  s.theme === 'system' ? media('(prefers-color-scheme: dark)') : s.theme === 'dark';
export const isStill = (s: Settings): boolean => s.motion === 'less' || media('(prefers-reduced-motion: reduce)');

export function applySettings(): void {
  const root = document.documentElement;
  root.dataset.theme = isDark(settings.value) ? 'dark' : 'light';
  root.dataset.motion = isStill(settings.value) ? 'less' : 'full';
}

export function changeSettings(change: Partial<Settings>): void {
  settings.update(change);
  saveSettings(settings.value);
  applySettings();
}

export function watchSystem(): void {
  matchMedia('(prefers-color-scheme: dark)').addEventListener('change', () => {
    applySettings();
    settings.update({});
  });
}

export const money = (sum: number): string => `${settings.value.currency}${sum.toFixed(2)}`;
export const minutes = (tenths: number): string => (tenths / 10).toFixed(1);

/** Labour is billed in steps that are begun: minutes and price of one. */
export const labourStep = ({ costs }: Book): { minutes: number; price: string } => ({
  minutes: Math.round(costs.labourStepHours * 60),
  price: money(costs.labourStepHours * costs.labourRate),
});

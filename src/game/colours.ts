/** The drawings' colours in both themes. */
import tokens from '../../assets/drawings/tokens.json';
import type { Theme } from './drawing.ts';

const COLOURS: Record<Theme, Record<string, string>> = tokens;

/** A fragment's `{token}` colours for a theme. */
export const coloured = (svg: string, theme: Theme): string =>
  svg.replace(/\{([\w-]+)\}/g, (whole, name: string) => COLOURS[theme][name] ?? whole);

export const colour = (name: string, theme: Theme): string => COLOURS[theme][name] ?? '#808080';

/** As a number, 0xrrggbb. */
export const colourNumber = (name: string, theme: Theme): number => Number.parseInt(colour(name, theme).slice(1), 16);

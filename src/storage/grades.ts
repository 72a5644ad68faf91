/** Grades that were worked out before, so that a debrief opens at once the next time. Losing one costs only the wait. */
import type { Grade } from '../grading/index.ts';
import { openOhmyard } from './database.ts';

export async function keptGrade(key: string): Promise<Grade | null> {
  try {
    const db = await openOhmyard();
    return (await db.get('grades', key))?.grade ?? null;
  } catch {
    return null;
  }
}

export async function keepGrade(key: string, grade: Grade): Promise<void> {
  try {
    const db = await openOhmyard();
    await db.put('grades', { key, grade });
  } catch {
    // Without storage it is worked out again.
  }
}

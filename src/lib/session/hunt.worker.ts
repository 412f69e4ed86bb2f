/** Judges hunts away from the page: questions in, answers out, each under its number. */
import { toldHunt, type HuntQuestion } from '../diagnosis';

addEventListener('message', ({ data }: MessageEvent<{ turn: number; question: HuntQuestion }>) => {
	postMessage({ turn: data.turn, told: toldHunt(data.question) });
});

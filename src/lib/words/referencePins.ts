/** The two three-pin sockets: what each is for, what it is not for, what to mind. */
import type { SocketKind } from '../engine';
import type { Proof, Reference } from './reference';

type ThreePin = Extract<SocketKind, `three-pin-${string}`>;

const NO_BREAKS: Proof = { with: 'none', lacks: ['TN', 'RN', 'SN', '1N'] };
const MATED: Proof = {
	with: 'three-pin',
	joined: [
		['plug.1', '1'],
		['plug.2', '2'],
		['plug.3', '3'],
		['plug.shell', 'G']
	],
	apart: [
		['1', '2'],
		['1', '3'],
		['2', '3']
	]
};

export const THREE_PINS: Readonly<Record<ThreePin, Reference>> = {
	'three-pin-female': {
		uses: [
			{
				text: 'Inputs: a microphone cable’s male plug goes in, since signal runs from male to female.',
				proof: [MATED]
			},
			{
				text: 'Lines whose shield should be there before the signal: pin 1 and the shell make first, pins 2 and 3 after them.',
				proof: [
					{
						with: 'three-pin',
						travel: 9,
						joined: [
							['plug.1', '1'],
							['plug.shell', 'G']
						],
						apart: [
							['plug.2', '2'],
							['plug.3', '3']
						]
					}
				]
			}
		],
		notFor: [
			{ text: 'Outputs. The female plug of a cable does not go in; an output has male contacts.' },
			{
				text: 'A place where phone plugs arrive as well: that is what a hybrid is for.',
				proof: [{ with: 'none', lacks: ['T', 'S'] }]
			},
			{
				text: 'Bonding the shield by the plug. The shell meets lug G, and nothing inside joins G to pin 1.',
				proof: [{ with: 'three-pin', apart: [['1', 'G']] }]
			},
			{ text: 'Switching. A plug opens nothing in it.', proof: [NO_BREAKS] }
		],
		cautions: {
			chassis:
				'On equipment, pin 1 and the shell go straight to the chassis where the cable enters. On a passive plate they do not meet at all: leave pin 1 and G unlinked there, and let the desk’s end do it.',
			mains:
				'The desk that feeds this socket sends phantom power up pins 2 and 3. Pull the desk’s mains plug, give its supply time to run down, and prove 2 to 1 and 3 to 1 dead before the iron touches a cup. Earth stays as it is; local codes and licensed practice decide.'
		},
		sources: []
	},
	'three-pin-male': {
		uses: [
			{
				text: 'Outputs: a cable’s female plug goes on, since signal runs from male to female.',
				proof: [MATED]
			},
			{
				text: 'Returns on a stage plate, from the desk back to amplifiers or active loudspeakers.'
			}
		],
		notFor: [
			{
				text: 'A microphone input. A microphone’s cable ends in a male plug, which does not go in; and phantom power would stand on open pins where anything can touch them.'
			},
			{
				text: 'A phone plug of any sort.',
				proof: [{ with: 'none', lacks: ['T', 'R', 'S'] }]
			},
			{ text: 'Switching. A plug opens nothing in it.', proof: [NO_BREAKS] }
		],
		cautions: {
			chassis:
				'The open pins stand close to the metal shell, and a metal tool or a bent pin can join them to the panel. Check pin 1 against G, and 2 and 3 against G, before the plate goes back: all three must be silent.',
			mains:
				'An active loudspeaker on this line has its own mains lead, often from another outlet. Pull it as well as the desk’s before you work here, and never open its earth to cure a hum; local codes and licensed practice decide what may be changed.'
		},
		sources: []
	}
};

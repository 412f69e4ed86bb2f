/** The four hybrids: what each is for, what it is not for, what to mind. Uses: common practice. */
import type { SocketKind } from '../engine';
import type { Proof, Reference } from './reference';

type Hybrid = Extract<SocketKind, `hybrid-${string}`>;

/** Two cables: nothing inside joins the halves, whichever plug is in. */
const HALVES_APART = (['none', 'ts', 'trs', 'shorting', 'three-pin'] as const).map(
	(state): Proof => ({
		with: state,
		apart: (['1', '2', '3'] as const).flatMap((pin) => [[pin, 'T'] as const, [pin, 'S'] as const])
	})
);
const NO_BREAKS: Proof = { with: 'none', lacks: ['TN', 'RN', 'SN', '1N'] };
const TS_BRIDGES: Proof = { with: 'ts', joined: [['R', 'S']] };
const PLUG_MISSES_BREAKS: Proof[] = [
	{
		with: 'trs',
		apart: [
			['plug.tip', 'TN'],
			['plug.ring', 'RN'],
			['plug.sleeve', 'SN']
		]
	},
	{ with: 'shorting', apart: [['plug.tip', 'TN']] }
];
const BREAKS_REST: Proof = {
	with: 'none',
	joined: [
		['T', 'TN'],
		['R', 'RN'],
		['S', 'SN']
	]
};

export const HYBRIDS: Readonly<Record<Hybrid, Reference>> = {
	'hybrid-5': {
		uses: [
			{
				text: 'A wall plate where a microphone arrives on one day and an instrument on the next, never both at once.'
			},
			{
				text: 'Two cables, one from 1, 2, 3 and one from T, S. They stay apart whichever plug is in.',
				proof: HALVES_APART
			}
		],
		notFor: [
			{
				text: 'A balanced line on a phone plug. There is no ring contact, so the ring of a TRS plug touches nothing.',
				proof: [
					{
						with: 'trs',
						apart: [
							['plug.ring', 'T'],
							['plug.ring', 'S']
						]
					}
				]
			},
			{
				text: 'One cable for both halves. Pin 3 has no partner in the jack, and a jumper from 3 to S would tie cold to the shield of the microphone line too.',
				proof: [
					{
						with: 'three-pin',
						wires: [
							['2', 'T'],
							['1', 'S'],
							['3', 'S']
						],
						joined: [['1', '3']]
					}
				]
			},
			{
				text: 'Switching. It has no break contact, so a plug opens nothing.',
				proof: [NO_BREAKS]
			}
		],
		cautions: {
			chassis:
				'S, pin 1 and lug G are three different things here. Do not link them at the plate to tidy up: pin 1 and S are shields that the equipment bonds to its chassis, G is the metal of the panel.',
			mains:
				'An instrument amplifier at the far end of the jack’s cable is a mains device. Unplug it and the desk before you solder here, and leave the protective earth of both alone; local codes and licensed practice decide the rest.'
		},
		sources: []
	},
	'hybrid-6': {
		uses: [
			{
				text: 'Balanced lines on either plug: a microphone on the three-pin half, a line on a TRS plug.',
				proof: [
					{
						with: 'trs',
						joined: [
							['plug.tip', 'T'],
							['plug.ring', 'R'],
							['plug.sleeve', 'S']
						]
					},
					{
						with: 'three-pin',
						joined: [
							['plug.1', '1'],
							['plug.2', '2'],
							['plug.3', '3']
						]
					}
				]
			},
			{
				text: 'One cable for both halves, with three jumpers: 1 to S, 2 to T, 3 to R. Either plug then reaches the same cable.',
				proof: [
					{
						with: 'trs',
						wires: [
							['1', 'S'],
							['2', 'T'],
							['3', 'R']
						],
						joined: [
							['plug.tip', '2'],
							['plug.ring', '3'],
							['plug.sleeve', '1']
						],
						apart: [
							['1', '2'],
							['1', '3'],
							['2', '3']
						]
					}
				]
			},
			{
				text: 'Two cables, one from each half, that keep microphone and line runs apart. Four such hybrids replace eight sockets.',
				proof: HALVES_APART
			}
		],
		notFor: [
			{
				text: 'A TS plug on a balanced line, without a thought. Its sleeve joins R to S, so cold lands on the shield.',
				proof: [TS_BRIDGES]
			},
			{
				text: 'Switching. It has no break contact, so a plug opens nothing.',
				proof: [NO_BREAKS]
			},
			{ text: 'Two plugs at the same time. Where both must be in, mount two sockets.' }
		],
		cautions: {
			chassis:
				'With one cable, the jumper from 1 to S carries the shield of both plugs. Keep it clear of lug G and of the flange: a whisker of solder there ties the shield to the panel at a place that nobody wrote down.',
			mains:
				'With jumpers fitted, phantom power from the desk stands on T and R as well as on 2 and 3. Unplug the desk from the mains, wait, and prove the line dead before you solder; never work on the desk’s own supply. Local codes and licensed practice apply.'
		},
		sources: [
			{
				fact: 'Two separate cables from one hybrid keep microphone and line runs apart: four hybrids replace eight sockets.',
				source: 'common practice',
				flag: 'PRACTICE'
			}
		]
	},
	'hybrid-9': {
		uses: [
			{
				text: 'Cutting off what stood there before: each break contact opens from its own spring when a phone plug lifts it, even an insulating one.',
				proof: [
					BREAKS_REST,
					...(['ts', 'trs', 'dummy'] as const).map((state): Proof => ({
						with: state,
						apart: BREAKS_REST.joined!
					}))
				]
			},
			{
				text: 'What is wired to the pins gives way to a line plug: the cable on T, R, S, and jumpers from TN to 2, from RN to 3, from SN to 1. An outlet elsewhere that is wired to the pins reaches the cable until a phone plug goes in here. A microphone plug in this opening reaches it too, but one opening takes one plug at a time.',
				proof: [
					{
						with: 'three-pin',
						wires: [
							['TN', '2'],
							['RN', '3'],
							['SN', '1']
						],
						joined: [
							['plug.2', 'T'],
							['plug.3', 'R'],
							['plug.1', 'S']
						]
					},
					{
						with: 'trs',
						wires: [
							['TN', '2'],
							['RN', '3'],
							['SN', '1']
						],
						joined: [
							['plug.tip', 'T'],
							['plug.ring', 'R']
						],
						apart: [
							['2', 'T'],
							['3', 'R'],
							['1', 'S']
						]
					}
				]
			},
			{
				text: 'A feed that a plug diverts: the source on the spring, what it feeds on the break contact.',
				proof: [
					{ with: 'none', joined: [['T', 'TN']] },
					{ with: 'trs', joined: [['plug.tip', 'T']], apart: [['T', 'TN']] }
				]
			}
		],
		notFor: [
			{
				text: 'Switching by the three-pin plug. It lifts no jack spring, so T, R and S stay on their break contacts.',
				proof: [{ with: 'three-pin', joined: BREAKS_REST.joined! }]
			},
			{
				text: 'Feeding a break contact from a plug. A plug touches springs, never a break contact.',
				proof: PLUG_MISSES_BREAKS
			},
			{
				text: 'Expecting a TS plug to leave R alone. Its sleeve stands on R and S and joins them.',
				proof: [TS_BRIDGES]
			}
		],
		cautions: {
			chassis:
				'SN is signal ground at rest, because S rests on it. Do not use SN as a handy chassis point: with a plug in it hangs free, and without one it puts the sleeve’s shield on the panel.',
			mains:
				'A microphone input may feed phantom power to TN and RN through jumpers while the springs look idle. Unplug the desk from the mains and prove every one of the nine contacts dead, with a plug in and without one. Protective earth stays on; local codes and licensed practice apply.'
		},
		sources: []
	},
	'hybrid-10': {
		uses: [
			{
				text: 'All that a hybrid of nine does: T, R and S have their break contacts here too.',
				proof: [BREAKS_REST, { with: 'trs', apart: BREAKS_REST.joined! }]
			},
			{
				text: 'Something that must end when a microphone is plugged in: 1N parts from pin 1, and rests on it again when the plug is out.',
				proof: [
					{ with: 'none', joined: [['1', '1N']] },
					{ with: 'three-pin', apart: [['1', '1N']] }
				]
			},
			{
				text: 'Seeing from the rear whether a three-pin plug is in: 1 and 1N are silent then. They sound with any phone plug in.',
				proof: (['ts', 'trs', 'dummy', 'shorting'] as const).map((state): Proof => ({
					with: state,
					joined: [['1', '1N']]
				}))
			}
		],
		notFor: [
			{
				text: 'Opening the shield of a line in service. Pin 1 is the way back of phantom power, and the screen of the microphone.'
			},
			{
				text: 'Protective earth or any bond. A contact that a plug can open never stands in an earth.'
			},
			{
				text: 'Switching T, R or S by the three-pin plug: it opens 1N and nothing else.',
				proof: [{ with: 'three-pin', joined: BREAKS_REST.joined!, apart: [['1', '1N']] }]
			}
		],
		cautions: {
			chassis:
				'1N joins whatever you wire to it to the shield on pin 1, as long as no three-pin plug is in. If that is the panel, the shield meets the chassis here at rest and nowhere with a plug in: write down why, or leave 1N empty.',
			mains:
				'1N looks like a ground switch and is one for signal only. Never lead a protective or bonding conductor through it, for no hum: pull the mains plugs, look for the cause with the line dead, and leave earthing to licensed practice and the local code.'
		},
		sources: [
			{
				fact: 'The tenth contact of a hybrid switches ground: one break contact on pin 1.',
				source: 'common practice',
				flag: 'PRACTICE'
			},
			{
				fact: 'Lifting pin 1 removes phantom power, because it is the return.',
				source: 'an open document, read in a digest that does not name it',
				flag: 'BOOK'
			},
			{
				fact: 'No switch in a protective conductor.',
				source: 'IEC 60364-5-54, from memory',
				flag: 'MEM'
			}
		]
	}
};

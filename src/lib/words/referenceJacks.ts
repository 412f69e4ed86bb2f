/** The six jacks: what each is for, what it is not for, what to mind. Uses: common practice. */
import type { SocketKind } from '../engine';
import type { Proof, Reference } from './reference';

type Jack = Extract<SocketKind, `jack-${string}` | 'patch-jack'>;

const RING_ALONE: Proof = {
	with: 'trs',
	apart: [
		['plug.ring', 'T'],
		['plug.ring', 'S']
	]
};
const TS_BRIDGES: Proof = { with: 'ts', joined: [['R', 'S']] };
const TRS_LANDS: Proof = {
	with: 'trs',
	joined: [
		['plug.tip', 'T'],
		['plug.ring', 'R'],
		['plug.sleeve', 'S']
	]
};
const OVERRIDDEN: Proof[] = [
	{ with: 'none', joined: [['T', 'TN']] },
	{ with: 'ts', joined: [['plug.tip', 'T']], apart: [['T', 'TN']] }
];

export const JACKS: Readonly<Record<Jack, Reference>> = {
	'jack-ts': {
		uses: [
			{
				text: 'Instruments and unbalanced lines: the tip carries the signal, the sleeve the shield and the way back.',
				proof: [
					{
						with: 'ts',
						joined: [
							['plug.tip', 'T'],
							['plug.sleeve', 'S']
						],
						apart: [['T', 'S']]
					}
				]
			}
		],
		notFor: [
			{
				text: 'A balanced line. There is no ring contact, so the ring of a TRS plug touches nothing.',
				proof: [RING_ALONE]
			},
			{
				text: 'An input that must be quiet with no plug in. At rest T hangs free; a break contact could tie it to S.',
				proof: [{ with: 'none', apart: [['T', 'S']], lacks: ['TN'] }]
			},
			{
				text: 'A metal bush where signal ground must keep off the panel: on a metal panel it joins S to the chassis.',
				proof: [{ with: 'none', metal: true, joined: [['S', 'panel']] }]
			}
		],
		cautions: {
			chassis:
				'The bush decides here. With a metal bush the nut ties the sleeve to the panel, washers or no washers; if the equipment’s signal ground meets its chassis elsewhere, take an insulated bush and check S against the panel: silent.',
			mains:
				'An instrument jack leads straight into an amplifier that hangs on the mains. Unplug the amplifier and let its supply run down before you change the jack. If touching the strings tingles, stop: that is a fault of the mains earth and work for a licensed electrician.'
		},
		sources: []
	},
	'jack-ts-break': {
		uses: [
			{
				text: 'An input that is quiet with no plug in: a jumper from TN to S ties the tip to the sleeve at rest, and a plug lifts it off.',
				proof: [
					{ with: 'none', wires: [['TN', 'S']], joined: [['T', 'S']] },
					{ with: 'ts', wires: [['TN', 'S']], apart: [['T', 'S']] }
				]
			},
			{
				text: 'A source that a plug overrides: the source on TN, the input on T. The plug cuts the source off and feeds T itself.',
				proof: OVERRIDDEN
			},
			{
				text: 'A source that a plug diverts: the source on T, what it feeds on TN, as when headphones silence a loudspeaker.',
				proof: OVERRIDDEN
			}
		],
		notFor: [
			{
				text: 'A balanced line. There is no ring contact, so the ring of a TRS plug touches nothing.',
				proof: [RING_ALONE]
			},
			{
				text: 'Switching the sleeve. S has no break contact and keeps what is wired to it.',
				proof: [{ with: 'ts', joined: [['plug.sleeve', 'S']], lacks: ['SN'] }]
			}
		],
		cautions: {
			chassis:
				'The quieting jumper from TN goes to S, which is signal ground, and not to the nut or the panel. Taken to the chassis it would put the input on the panel whenever the plug is out.',
			mains:
				'A loudspeaker output may be wired to T here, and an amplifier at work drives volts and amperes through it. Switch the amplifier off, pull its mains plug and disconnect it before you probe or solder. Its protective earth is not yours to change; local codes and licensed practice apply.'
		},
		sources: []
	},
	'jack-trs': {
		uses: [
			{
				text: 'Balanced lines: tip hot, ring cold, sleeve shield.',
				proof: [TRS_LANDS]
			},
			{ text: 'Stereo leads: tip left, ring right.' },
			{ text: 'Inserts: send on the tip and return on the ring on most desks, by no standard.' }
		],
		notFor: [
			{
				text: 'A TS plug where R is fed. Its sleeve joins R to S and shorts whatever drives R.',
				proof: [TS_BRIDGES]
			},
			{
				text: 'An insert that must pass the signal with no plug in. T and R stay apart at rest; that needs break contacts.',
				proof: [{ with: 'none', apart: [['T', 'R']], lacks: ['TN', 'RN'] }]
			},
			{
				text: 'A line that carries phantom power, with TS plugs about. R shorted to S draws 7.059 mA through one 6.8 kΩ feed.',
				proof: [TS_BRIDGES]
			}
		],
		cautions: {
			chassis:
				'S is the shield of a balanced line here. In equipment it goes to the chassis where the cable enters, on a passive plate it only passes through. Decide which of the two this jack is before you pick a metal or an insulated bush.',
			mains:
				'If this jack shares a line with a microphone input, phantom power stands on T and R. Switch it off, unplug the desk from the mains and prove both against S dead before you solder. Protective earth is never a way to silence a line; local codes and licensed practice decide.'
		},
		sources: [
			{
				fact: 'One leg of 48 V phantom power shorted to the shield draws 7.059 mA: 48 V / 6800 Ω.',
				source: 'IEC 61938, as reported, for both numbers; the quotient is worked out',
				flag: 'CALC'
			},
			{
				fact: 'Stereo: tip left, ring right. Insert: tip send, ring return on most desks, not by any standard.',
				source: 'common practice',
				flag: 'PRACTICE'
			}
		]
	},
	'jack-trs-break': {
		uses: [
			{
				text: 'An insert that closes by itself: send on T, return on R, and a jumper from TN to RN. With no plug the signal passes; a plug parts the two.',
				proof: [
					{ with: 'none', wires: [['TN', 'RN']], joined: [['T', 'R']] },
					{ with: 'trs', wires: [['TN', 'RN']], apart: [['T', 'R']] }
				]
			},
			{
				text: 'A balanced input that is quiet with no plug in: jumpers from TN to SN and from RN to SN tie both legs to the sleeve at rest.',
				proof: [
					{
						with: 'none',
						wires: [
							['TN', 'SN'],
							['RN', 'SN']
						],
						joined: [
							['T', 'S'],
							['R', 'S']
						]
					},
					{
						with: 'trs',
						wires: [
							['TN', 'SN'],
							['RN', 'SN']
						],
						apart: [
							['T', 'S'],
							['R', 'S'],
							['T', 'R']
						]
					}
				]
			},
			{
				text: 'A balanced source that a plug overrides, shield and all: the source on TN, RN, SN, the input on T, R, S.',
				proof: [
					{
						with: 'trs',
						joined: TRS_LANDS.joined!,
						apart: [
							['T', 'TN'],
							['R', 'RN'],
							['S', 'SN']
						]
					}
				]
			}
		],
		notFor: [
			{
				text: 'Feeding the break contacts from the plug: it touches the springs and nothing else.',
				proof: [
					{
						with: 'trs',
						apart: [
							['plug.tip', 'TN'],
							['plug.ring', 'RN'],
							['plug.sleeve', 'SN']
						]
					}
				]
			},
			{
				text: 'A TS plug in that insert: the return on R is joined to the sleeve, and the channel falls silent.',
				proof: [{ with: 'ts', wires: [['TN', 'RN']], joined: [['R', 'S']] }]
			}
		],
		cautions: {
			chassis:
				'SN parts the shield when a plug goes in. Use it only where the shield has another way to its chassis, and never as the one joint between signal ground and panel: that joint must not hang on a plug.',
			mains:
				'An insert jack sits inside a desk that has a mains supply. Working on its rear means opening the desk: unplug it first, let the supply run down, and leave everything on the mains side of the case to licensed practice and the local code.'
		},
		sources: []
	},
	'patch-jack': {
		uses: [
			{
				text: 'One jack of a patch field: its line on T, R, S, its normal link on TN and RN.',
				proof: [
					{
						with: 'none',
						joined: [
							['T', 'TN'],
							['R', 'RN']
						]
					},
					{
						with: 'trs',
						joined: TRS_LANDS.joined!,
						apart: [
							['T', 'TN'],
							['R', 'RN']
						]
					}
				]
			},
			{
				text: 'Full-normal, half-normal, parallel or isolated rows: the jack is the same, the links behind it differ.'
			}
		],
		notFor: [
			{
				text: 'Parting the shields. There is no break contact on S, so the sleeves of a row stay as they are wired.',
				proof: [{ with: 'trs', joined: [['plug.sleeve', 'S']], lacks: ['SN'] }]
			},
			{
				text: 'Patching a line while phantom power is on. On its way in the tip passes S and R, and shorts for a moment what it should not touch.',
				proof: [
					{ with: 'trs', travel: 5, joined: [['plug.tip', 'S']] },
					{ with: 'trs', travel: 22, joined: [['plug.tip', 'R']] }
				]
			},
			{
				text: 'TS cords in a balanced row. The sleeve of the plug joins R to S.',
				proof: [TS_BRIDGES]
			}
		],
		cautions: {
			chassis:
				'In a patch field dozens of sleeves end in one frame. Find out whether the frame’s jacks have metal bushes before you add a shield: two strips may join the signal grounds of two rooms through the rack’s chassis.',
			mains:
				'A rack that holds a patch field holds mains devices too. Work on the field with the rack’s supply off and locked off, treat everything behind other panels as live, and leave the rack’s earth bar to licensed practice and the local code.'
		},
		sources: [
			{
				fact: 'Top row sources, bottom row destinations. Full-normal uses the breaks of both rows, half-normal those of the bottom row.',
				source: 'common practice',
				flag: 'PRACTICE'
			}
		]
	},
	'jack-ts-changeover': {
		uses: [
			{
				text: 'A lamp, a relay or a logic line that must know whether a plug is in: C stands on NC at rest and moves to NO.',
				proof: [
					{ with: 'none', joined: [['C', 'NC']], apart: [['C', 'NO']] },
					{ with: 'ts', joined: [['C', 'NO']], apart: [['C', 'NC']] }
				]
			},
			{
				text: 'Keeping that circuit off the signal: C, NC and NO touch neither T nor S in any state.',
				proof: (['none', 'ts', 'trs', 'dummy', 'shorting'] as const).map((state): Proof => ({
					with: state,
					apart: (['C', 'NC', 'NO'] as const).flatMap((c) => [[c, 'T'] as const, [c, 'S'] as const])
				}))
			}
		],
		notFor: [
			{
				text: 'Muting or overriding the signal by itself: T and S have no break contact.',
				proof: [{ with: 'none', lacks: ['TN', 'SN'] }]
			},
			{
				text: 'Telling a cable from an insulating plug. Whatever lifts the tip spring moves the changeover.',
				proof: [{ with: 'dummy', joined: [['C', 'NO']] }]
			},
			{
				text: 'Mains, or any voltage that can hurt. The contacts stand a few millimetres from a plug that people hold.'
			}
		],
		cautions: {
			chassis:
				'The lamp’s circuit has a ground of its own. Do not borrow S or the panel as its return: the lamp’s current would then flow in the shield of the line, and the switching be heard.',
			mains:
				'The changeover switches a small extra-low voltage and nothing else: no mains lamp, no mains relay coil. Feed it from a supply that is approved for that, outside the box, and leave whatever stands on the mains side to licensed practice and the local code.'
		},
		sources: [
			{
				fact: 'Form C changes over and breaks before it makes.',
				source: 'relay trade forms, common practice',
				flag: 'PRACTICE'
			}
		]
	}
};

/**
 * The glossary's second half: wires, signal, ground, the meter, faults. An id is the anchor of the
 * entry on the page and stays as it is; `also` are other words that lead to it. Trade words: common
 * practice, unless an entry names its source.
 */
export const SIGNAL_TERMS = [
	{
		id: 'jumper',
		term: 'jumper',
		also: ['jumpers'],
		meaning: 'A short wire soldered between two contacts.'
	},
	{
		id: 'cable',
		term: 'cable',
		also: ['cables'],
		meaning: 'Several insulated cores, often inside a shield, that run from one place to another.'
	},
	{
		id: 'core',
		term: 'core',
		also: ['cores'],
		meaning: 'One conductor of a cable. People count cores from one.'
	},
	{
		id: 'shield',
		term: 'shield, or screen',
		also: ['shield', 'shields', 'screen'],
		meaning:
			'The conductor that surrounds the cores of a cable, on pin 1 and on the sleeve. It goes to the chassis where the cable enters equipment (AES48-2019, as reported).'
	},
	{
		id: 'awg',
		term: 'AWG, or gauge',
		also: ['AWG', 'gauge'],
		meaning: 'A number for the thickness of a wire. A higher number is a thinner wire.'
	},
	{
		id: 'conductor',
		term: 'conductor',
		also: ['conductors'],
		meaning: 'Anything that carries current: a wire, a core, a spring on a plug, a solder bridge.'
	},
	{
		id: 'hot',
		term: 'hot',
		meaning:
			'The signal conductor with the plus sign: pin 2, and the tip. It has nothing to do with the mains.'
	},
	{
		id: 'cold',
		term: 'cold',
		meaning: 'The signal conductor with the minus sign: pin 3, and the ring of a balanced line.'
	},
	{
		id: 'leg',
		term: 'leg',
		also: ['legs'],
		meaning: 'One of the two signal conductors of a balanced line.'
	},
	{
		id: 'balanced',
		term: 'balanced',
		also: ['balanced line', 'balanced lines'],
		meaning:
			'A line with two like signal conductors, hot and cold, beside the shield. The input takes the difference of the two, so that what strikes both alike cancels.'
	},
	{
		id: 'unbalanced',
		term: 'unbalanced',
		also: ['unbalanced line', 'unbalanced lines'],
		meaning: 'A line with one signal conductor, whose shield is also the way back.'
	},
	{
		id: 'polarity',
		term: 'polarity',
		meaning:
			'Which way up a signal arrives. With hot and cold exchanged it arrives reversed, at full level.'
	},
	{
		id: 'source',
		term: 'source',
		also: ['sources'],
		meaning: 'A device that gives a signal: a microphone, or the output of a machine.'
	},
	{
		id: 'input',
		term: 'input',
		also: ['inputs'],
		meaning: 'A device that listens between two of its terminals.'
	},
	{
		id: 'clash',
		term: 'clash',
		meaning: 'Two sources that reach one input at the same time.'
	},
	{
		id: 'decibel',
		term: 'decibel, dB',
		also: ['decibel', 'dB'],
		meaning:
			'A measure of one level against another. Half the voltage is about 6 dB less; here every level is measured against one volt.'
	},
	{
		id: 'phantom-power',
		term: 'phantom power',
		also: ['phantom'],
		meaning:
			'48 V that an input sends up both signal conductors to a microphone, through 6.8 kΩ each (IEC 61938, as reported). The shield is its return.'
	},
	{
		id: 'chassis-ground',
		term: 'chassis ground',
		also: ['chassis'],
		meaning: 'The metal of enclosure and panel, bonded to protective earth in mains equipment.'
	},
	{
		id: 'signal-ground',
		term: 'signal ground',
		meaning: 'The zero-volt line of a circuit, joined to the chassis at one defined place.'
	},
	{
		id: 'protective-earth',
		term: 'protective earth',
		meaning: 'The safety conductor of the mains. Nobody lifts or switches it, for any hum.'
	},
	{
		id: 'bond',
		term: 'bond',
		also: ['bonds', 'bonded'],
		meaning: 'A joint that is made on purpose between metal parts and is meant to last.'
	},
	{
		id: 'pin-1-problem',
		term: 'pin-1 problem',
		meaning:
			'Hum that comes in because a shield is taken to the circuit inside equipment instead of to its case. The cure is to bond the shield to the chassis where it enters.'
	},
	{
		id: 'ground-loop',
		term: 'ground loop',
		also: ['hum loop'],
		meaning:
			'Two ground paths between the same two devices make a loop in which hum current can flow. Protective earth is never the place to open it.'
	},
	{
		id: 'dead-and-live',
		term: 'dead and live',
		also: ['dead', 'live'],
		meaning:
			'A circuit is dead when nothing feeds it and this has been proved with a meter. It is live when a voltage stands on it, phantom power included.'
	},
	{
		id: 'prove',
		term: 'prove',
		also: ['prove the meter'],
		meaning:
			'To try the meter on something known, test, and try it on the known thing again. Only then does silence mean something.'
	},
	{
		id: 'probe',
		term: 'probe',
		also: ['probes'],
		meaning:
			'The pointed end of a meter’s lead. Also one question to a socket: a plug state and the two places that are touched.'
	},
	{
		id: 'reading',
		term: 'reading',
		also: ['readings'],
		meaning: 'What the meter says between its two probes.'
	},
	{
		id: 'continuity',
		term: 'continuity',
		also: ['sounds', 'sounds together'],
		meaning:
			'That a meter finds a way with little resistance between two places. Its tone sounds under a set limit, 30 Ω here; no standard fixes one.'
	},
	{
		id: 'over-range',
		term: 'over range',
		meaning: 'What the meter shows above 40 MΩ: nothing that it can find joins the probes.'
	},
	{
		id: 'leads-zeroed',
		term: 'leads zeroed',
		also: ['zeroed', 'zeroing'],
		meaning:
			'With the resistance of the meter’s own leads, about 0.2 Ω, taken off each reading. Touch the probes together first to see it.'
	},
	{
		id: 'ohm',
		term: 'ohm, Ω',
		also: ['ohm', 'ohms', 'resistance'],
		meaning: 'The unit of resistance. A good contact has a few hundredths of an ohm.'
	},
	{
		id: 'net',
		term: 'net',
		also: ['nets'],
		meaning: 'All contacts that conductors make one. A resistance inside a device does not count.'
	},
	{
		id: 'joined-and-apart',
		term: 'joined and apart',
		also: ['joined', 'apart'],
		meaning: 'Two contacts are joined when they are on one net, and apart when they are not.'
	},
	{
		id: 'truth-table',
		term: 'truth table',
		also: ['continuity table'],
		meaning: 'Which contacts are joined in every plug state, all in one table.'
	},
	{
		id: 'open',
		term: 'open',
		meaning:
			'Not joined where it should be: a broken wire, a joint never soldered. A break contact stands open while a plug lifts its spring.'
	},
	{
		id: 'short',
		term: 'short',
		also: ['shorted'],
		meaning: 'A joint with almost no resistance between two conductors, most often an unwanted one.'
	},
	{
		id: 'bridge',
		term: 'bridge',
		also: ['solder bridge', 'bridged'],
		meaning:
			'A joint between neighbours that should be apart: a drop of solder, a stray strand, or a plug across two springs.'
	},
	{
		id: 'swap',
		term: 'swap',
		also: ['swapped'],
		meaning: 'Two leads that each landed on the other’s contact.'
	},
	{
		id: 'resistive-joint',
		term: 'resistive joint',
		meaning:
			'A joint that conducts with more resistance than it should. Continuity may still sound.'
	},
	{
		id: 'dirty-break',
		term: 'dirty break',
		also: ['dirty break contact'],
		meaning: 'A break contact with a film on it that adds resistance while it is closed.'
	},
	{
		id: 'stuck-break',
		term: 'stuck break',
		also: ['stuck'],
		meaning: 'A break contact that never closes, or one that never opens.'
	},
	{
		id: 'bent-spring',
		term: 'bent spring',
		meaning: 'A spring that never touches a plug and never lifts off its break contact.'
	}
] as const;

/**
 * The glossary's first half: parts, springs and break contacts, patching. An id is the anchor of the
 * entry on the page and stays as it is; `also` are other words that lead to it. Trade words: common
 * practice, unless an entry names its source.
 */
export const PART_TERMS = [
	{
		id: 'contact',
		term: 'contact',
		also: ['contacts'],
		meaning:
			'A piece of metal in a socket that is made to touch another: a pin, a spring or a break contact. At the rear each one ends in a lug or a cup for a wire.'
	},
	{
		id: 'lug',
		term: 'lug',
		also: ['lugs'],
		meaning: 'The metal tail of a contact at the rear of a socket, where a wire is soldered.'
	},
	{
		id: 'cup',
		term: 'cup',
		also: ['cups', 'solder cup', 'solder cups'],
		meaning:
			'The hollow end of a contact into which a wire is soldered. With a cable and a jumper it holds two conductors.'
	},
	{
		id: 'termination',
		term: 'termination',
		meaning:
			'How a wire ends at a contact: in a solder cup, on a board pin, in a crimp or in a slot that cuts through the insulation.'
	},
	{
		id: 'rear-and-front',
		term: 'rear and front',
		also: ['rear view', 'front view', 'solder side', 'mating face'],
		meaning:
			'The rear is the side with the lugs, the front the side where the plug goes in. One is the mirror image of the other, so read the number that is moulded beside each contact.'
	},
	{
		id: 'three-pin',
		term: 'three-pin connector',
		also: ['three-pin plug', 'three-pin socket', 'three-pin half', 'three-pin opening'],
		meaning:
			'The circular connector of microphone cables. Pin 1 is the shield, pin 2 hot, pin 3 cold (AES14-1992, as reported).'
	},
	{
		id: 'pin',
		term: 'pin',
		also: ['pins', 'pin 1', 'pin 2', 'pin 3'],
		meaning:
			'One of the contacts 1, 2 and 3 of a three-pin connector, also where it is a hole. Pin 1 makes first and parts last in the common form (from memory).'
	},
	{
		id: 'male-and-female',
		term: 'male and female',
		also: ['male', 'female'],
		meaning:
			'Male contacts are pins, female ones are holes that take them. Outputs are male and inputs female, so signal runs from male to female (AES14-1992, as reported).'
	},
	{
		id: 'shell',
		term: 'shell',
		meaning:
			'The metal body of a three-pin plug. It meets the chassis lug of the socket when the plug is in.'
	},
	{
		id: 'latch',
		term: 'latch',
		meaning:
			'The catch that holds a three-pin plug in its socket. A phone plug has none; a spring holds it by friction.'
	},
	{
		id: 'jack',
		term: 'jack',
		also: ['jacks', 'jack half', 'phone jack'],
		meaning: 'A socket for a 6.35 mm phone plug, with springs for its tip, ring and sleeve.'
	},
	{
		id: 'phone-plug',
		term: 'phone plug',
		also: ['phone plugs', '6.35 mm plug'],
		meaning:
			'The 6.35 mm plug with a tip, perhaps a ring, and a sleeve. A TS plug has two conductors, a TRS plug three.'
	},
	{
		id: 'ts-plug',
		term: 'TS plug',
		also: ['TS plugs'],
		meaning:
			'A phone plug without a ring. Its sleeve covers the place of the ring, so in a jack with a ring spring it joins R to S.'
	},
	{
		id: 'trs-plug',
		term: 'TRS plug',
		also: ['TRS plugs'],
		meaning: 'A phone plug with tip, ring and sleeve.'
	},
	{
		id: 'dummy-plug',
		term: 'dummy plug',
		also: ['insulating plug'],
		meaning: 'A phone plug of insulating stuff. It lifts the springs and connects nothing.'
	},
	{
		id: 'shorting-plug',
		term: 'shorting plug',
		meaning: 'A phone plug with tip, ring and sleeve joined inside.'
	},
	{
		id: 'tip',
		term: 'tip',
		also: ['T'],
		meaning:
			'The nose of a phone plug, and the contact T that touches it. It carries hot, or the whole signal of an unbalanced line.'
	},
	{
		id: 'ring',
		term: 'ring',
		also: ['R'],
		meaning:
			'The conductor between tip and sleeve of a TRS plug, and the contact R that touches it. It carries cold on a balanced line.'
	},
	{
		id: 'sleeve',
		term: 'sleeve',
		also: ['S'],
		meaning: 'The shank of a phone plug, and the contact S that touches it. It carries the shield.'
	},
	{
		id: 'bush',
		term: 'bush',
		also: ['metal bush', 'insulated bush'],
		meaning:
			'The threaded collar of a jack. An insulated one keeps the sleeve off the panel, a metal one joins the two.'
	},
	{
		id: 'chassis-lug',
		term: 'chassis lug',
		also: ['lug G', 'chassis lugs'],
		meaning:
			'The contact G, which meets the metal of the panel. It is not counted among a socket’s contacts.'
	},
	{
		id: 'hybrid',
		term: 'hybrid',
		also: ['hybrids', 'hybrid socket', 'hybrid sockets'],
		meaning:
			'A socket with a three-pin half and a jack half behind one opening. It takes one plug at a time, and nothing inside joins the two halves.'
	},
	{
		id: 'spring',
		term: 'spring',
		also: ['springs', 'tip spring', 'ring spring', 'sleeve spring'],
		meaning: 'The sprung contact in a jack that a plug touches and lifts.'
	},
	{
		id: 'break-contact',
		term: 'break contact, or normal',
		also: ['break contact', 'break contacts', 'normal', 'normals', 'TN', 'RN', 'SN'],
		meaning:
			'A contact on which a spring rests while no plug is in: TN, RN, SN, and 1N for pin 1. It opens when its own spring lifts.'
	},
	{
		id: 'pin-1-break',
		term: 'pin-1 break',
		also: ['1N'],
		meaning:
			'The break contact 1N of a hybrid of ten, on which pin 1 rests. It opens when a three-pin plug goes in, together with the making of pin 1.'
	},
	{
		id: 'lift',
		term: 'lift',
		also: ['lifts', 'lifted'],
		meaning:
			'A plug lifts a spring when it pushes it off its rest. An insulating plug lifts as well as a metal one.'
	},
	{
		id: 'travel',
		term: 'travel',
		meaning:
			'How far a plug is in, in millimetres from the front face. The millimetres here are schematic: they keep the order of events and are no maker’s drawing.'
	},
	{
		id: 'seated',
		term: 'seated, or home',
		also: ['seated', 'home'],
		meaning: 'A plug is seated when it is all the way in.'
	},
	{
		id: 'passing-joint',
		term: 'passing joint',
		also: ['passing joints'],
		meaning:
			'A joint that a plug makes on its way in and that is gone once it is home, as when the tip of a plug passes under the ring spring.'
	},
	{
		id: 'plug-state',
		term: 'plug state',
		also: ['plug states'],
		meaning: 'What stands in a socket: no plug, or a plug of a certain kind, seated.'
	},
	{
		id: 'changeover',
		term: 'changeover',
		also: ['changeovers', 'isolated changeover', 'NC', 'NO'],
		meaning:
			'A contact C that stands on NC at rest and moves to NO when a plug is in. An isolated one touches no signal.'
	},
	{
		id: 'contact-forms',
		term: 'form A, B, C, D',
		also: ['make contact', 'break before make', 'make before break'],
		meaning:
			'Relay words for contacts: A makes, B breaks, C changes over and breaks before it makes, D makes before it breaks. T with TN is a form B that the plug works.'
	},
	{
		id: 'patch-jack',
		term: 'patch jack',
		also: ['patch jacks'],
		meaning: 'One jack of a patch field, with break contacts for the normal link.'
	},
	{
		id: 'patch-field',
		term: 'patch field',
		also: ['patch row', 'patch rows', 'patching'],
		meaning:
			'Two rows of jacks, sources above and destinations below, that a patch cord can link afresh without soldering.'
	},
	{
		id: 'patch-cord',
		term: 'patch cord',
		also: ['patch cords'],
		meaning: 'A short cable with a plug at each end, for use between two jacks of a patch field.'
	},
	{
		id: 'normal-link',
		term: 'normal link',
		also: ['normalled'],
		meaning: 'The link between two patch jacks that stands while no plug is in.'
	},
	{
		id: 'full-normal',
		term: 'full-normal',
		meaning:
			'Two patch jacks linked through the break contacts of both. A plug in either one breaks the link.'
	},
	{
		id: 'half-normal',
		term: 'half-normal',
		meaning:
			'Two patch jacks linked from the springs of the upper one to the break contacts of the lower one. A plug above taps the link, a plug below breaks it.'
	},
	{
		id: 'parallel',
		term: 'parallel',
		meaning: 'Two patch jacks with their springs wired together. No plug breaks the link.'
	},
	{
		id: 'isolated',
		term: 'isolated',
		meaning: 'Joined to nothing else. Two isolated patch jacks have no link behind them.'
	},
	{
		id: 'divert-and-override',
		term: 'divert and override',
		also: ['divert', 'diverts', 'override', 'overrides'],
		meaning:
			'A source on the spring is diverted: the plug takes it and the break contact falls silent. A source on the break contact is overridden: the plug cuts it off and feeds the spring instead.'
	},
	{
		id: 'insert',
		term: 'insert',
		meaning:
			'A jack where a device can be put into the path of a signal: send on the tip and return on the ring on most desks, by no standard.'
	}
] as const;

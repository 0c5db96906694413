package sheets

// wording is every word a sheet says of its own; what is said of a garment
// comes with the plan. In a pattern {name} stands for a value. The section
// titles are also where readers and links look, so they stay short.
type wording struct {
	opening  openingWords
	layout   layoutWords
	cautions string
	cutting  cuttingWords
	also     alsoWords
	chalk    chalkWords
	glance   glanceWords
	steps    stepWords
	order    orderWords
	closing  closingWords
	bench    benchWords
	class    classWords
	tools    toolWords
	share    shareWords
	sitting  sittingWords
	lesson   lessonWords
	figures  figureWords
	counts   countWords
	none     string // a cell with nothing in it
	list     string // between the parts of a list in a sentence
	last     string // before its last part
	dot      string // between the parts of a heading or a strip
}

// counted is a noun with its number.
type counted struct{ one, many string }

type countWords struct {
	garments, operations, steps, pieces, strips, joins, bobbins, persons counted
	minutes, hours, hoursMinutes, underMinute                            string
}

type benchWords struct {
	intro, step, handed, from, handOn, to, nobody string
	sizes, allowance, finished, sewn              string
}

type classWords struct {
	intro, step, show, showCheck, showLast, room, name string
	sides, sidesAlt, rightUp, wrongUp                  string
	glossary, term, ease                               string
	bands                                              [7]string // of reading ease
}

type openingWords struct {
	made, madeSelf, room, work, byPlace, changes, wind, size, proved, weighed, bounded string
	machine, iron, hand, table                                                         string
	cloth, is, colour, width, buy, buyBasis, basisOf, under                            string
	least, leastLead, leastBasis                                                       string
	measure, used, from, given, own, measures, measuresList, measureIs                 string
}

type layoutWords struct {
	title, intro, places, thread, needles, materials, tools, handling                                       string
	needle, foot, threads, heat, steam                                                                      string
	colour, kind, metres, bobbins, threadBasis, spool                                                       string
	needleItem, interfacing, tape, toolItem, notion, counted, selfNote, then, handItem, tableItem, dotsMean string
}

type cuttingWords struct {
	title, intro, piece, cloth, count, cut, size, netSize, grain, sizeNote                     string
	onFold, pair, single, biasWhole, turned, marksTitle, marksOf                               string
	edgesTitle, edge, length, allowance, seam, noAllowance, fold, middle, spare                string
	stripsTitle, strip, on, cutWidth, pieces, each, joins                                      string
	biasOf, bias, straight, across, noJoin                                                     string
	joined, inOne                                                                              counted
	interfacingTitle, steadies, material, part, half, whole, inHem, inHemBias, attach, because string
	notTaken, notThese                                                                         string
}

// alsoWords are the words on further sizes of a job.
type alsoWords struct {
	own, size, title, made, choices, measure      string
	otherwise, seam, besides, other, part, checks string
	sizeLead, figures, instead, words, without    string
	anotherWay, expect                            string
	drawn, edges, chalk                           string
	all, what, much, strip, area, thread, basis   string
	sewing                                        string
}

type chalkWords struct {
	title, intro, piece, fold, middle, left, point, where, down, in, draw string
	corner, along, bend, again, begin, straight, hollow, round, smooth    string
	mark                                                                  string
}

type glanceWords struct {
	title, seam, sewn, class, allowance, finished, length, stitches, copies, classNote          string
	use, anyway, why, against, worked, runnersUp, ruledOut, other, others, only, untold, source string
}

type stepWords struct {
	title, intro, introHands, introAll, step, thread, threadBobbin, threadLoopers, bobbin, loopers, needle, foot, stitch, heat, steam, dry, about string
	setUp, change, set, setFoot, turn, takes                                                                                                      string
	right, after, check, within, exactly, part, partOf, same                                                                                      string
	whatThread, whatBobbin, whatLoopers, whatNeedle, whatFoot, whatStitch, whatHeat, whatAnd                                                      string
	introBrief, oneLine, onParts                                                                                                                  string
	dots                                                                                                                                          [4]string
}

type orderWords struct {
	title, take, proved, weighed, bounded, more, same, less, how string
	what, here, seamBySeam, minutes, threads, stations           string
	wishRegion, wishSmall, wishDelicate, wishFitting, picked     string
	wishKept, wishUnkept, wishEach                               string
	book, bookNote, bookWaits, moves, kept, refused              string
	forcedOne                                                    counted
}

type closingWords struct{ notices, notice, needle, notes, unitsMixed string }

// toolWords are the small tools to have at hand.
type toolWords struct {
	tape, shears, chalk, pins, gauge, scissors, pinking                   string
	pressCloth, needleBoard, sleeveBoard, clapper, turner, needle, bodkin string
}

// shareWords are the words on shared work.
type shareWords struct {
	title, fromAfter, toFor, setUp                                              string
	cutters, intro, begun, fewest, soonest, bounded, alone, maker               string
	inHand, handOvers, noHandOvers, more, restsOn, give, giveIntro, giveNothing string
	giveTo, row, rowIntro, noneUnder, proved, rateFewest, rateFound, tables     string
	bench, idle, here, work, wait, waitFor, waitMachine, turn                   string
	comes, asks, handOn, doneAt, day, dayCaption, dayAlt, who                   string
	operations, atWork, waiting, at, what, from, to, with                       string
	doneAfter, saves, on, takesHer, people, every, perHour, allAfter            string
	sits, ofItSetUp                                                             string
	best, lacks, table, takes, places                                           string
}

// sittingWords are the words on several garments in one sitting.
type sittingWords struct {
	made, one, several, notes, of, oneLine          string
	inTurnMore, inTurnSame, inTurnLess, inTurnFound string
}

// lessonWords are the words on a class in step.
type lessonWords struct {
	span, percent                                                                             string
	intro, work, atHome, number, free, how, who, whoHow                                       string
	place, right, check, within, own, seams, numbers, notFor                                  string
	allFor, otherwise, stitchFirst, stitch, stitchAt, howAt, change, teacher                  string
	bestFound, cheapest, spends, ownBest, restsOn, about, session, dated                      string
	extra, meeting, homework, show, shown, lookAt, all, wanted                                string
	needles, feet, heat, interfacing, notions, atTable, forShowing, ready                     string
	thread, changeOver, showAfter, showWork, lines, groups, materials, interfacings           string
	nameWhat, noneAtAll, needlesTitle, cloth, threadTitle, sessionColumn, when, numbersColumn string
	homeColumn, seam, sewn, allowance, finished, whoColumn, pace, herWork                     string
	changes, herself, machine, machines, forWhom, placeColumn, thereAre, meanWait             string
	worst, most, inUse, colour, width, buy, kind, together                                    string
	bobbins                                                                                   string
}

type figureWords struct {
	mapAlt, mapCaption, mapLines, mapSteadied, mapTaped, lineAlt, lineCaption, sectionAlt, sectionCaption string
	sectionName, sectionsCaption, stageName, stageAlt, stagesCaption                                      string
	stripAlt, stripCaption, rightSide, foldHere, joins                                                    string
	sketchAlt, whereAlt, knownFront, knownBack, viewFront, viewBack                                       string
	rhythmAlt, rhythmCaption, rhythmBar, rhythmSum, rhythmPart                                            string
	larger, smaller, lifeSize                                                                             string
	plyA, plyB, plyOnly, plyStrip, plyInterfacing, plyElastic                                             string
	cutOut, edge, noAllowance                                                                             string
}

// english is the wording of the sheets.
func english() wording {
	return wording{
		none: "–", list: ", ", last: " and ", dot: " · ",
		counts: countWords{
			garments:   counted{"1 garment", "{n} garments"},
			operations: counted{"1 operation", "{n} operations"},
			steps:      counted{"1 step", "{n} steps"},
			pieces:     counted{"1 piece", "{n} pieces"},
			strips:     counted{"1 strip", "{n} strips"},
			joins:      counted{"1 join", "{n} joins"},
			bobbins:    counted{"1 bobbin", "{n} bobbins"},
			persons:    counted{"1 person", "{n} people"},
			minutes:    "{n} min", hours: "{h} h", hoursMinutes: "{h} h {n} min", underMinute: "under 1 min",
		},
		opening: openingWords{
			made: "{garment}, {count}.", madeSelf: "{count}.", room: "Workroom: {room}.",
			work:    "The work is {operations} in {steps} and takes about {minutes}: {places}.",
			byPlace: "{minutes} {place}",
			machine: "at the machine", iron: "at the iron", hand: "by hand", table: "at the table",
			changes: "Changes of thread, needle, foot, stitch and heat, and going from place to place, take about {minutes} more.",
			wind:    "Winding {bobbins} before you begin takes about {minutes}.",
			proved:  "No order of these operations needs less time for changes; that is proved.",
			weighed: "No order of these operations needs less, changes and wishes counted together; that is proved.",
			bounded: "An order with less time for changes has not been found, but is not ruled out.",
			size:    "All times are estimates.",
			cloth:   "Cloth", is: "Kind of cloth", colour: "Colour", width: "Width", buy: "Buy about", least: "At least",
			leastLead: "At least:", leastBasis: "by the area of the pieces in cloth so wide, by the longest of them and by shrinkage; no lay does with less.",
			buyBasis: "How much to buy.", basisOf: "{of} – {basis}", under: "{cloth}, underneath",
			measures: "Measures and choices:", measuresList: "{list}.", measureIs: "{measure} {used}",
			measure: "Measure or choice", used: "Used", from: "From", given: "given", own: "the garment's own",
		},
		layout: layoutWords{
			title: "What to lay out", intro: "Lay out all of this before you begin. Tick what is there.",
			places: "Places to work", thread: "Thread", needles: "Needles", materials: "Interfacing and notions",
			tools: "Small tools", handling: "Handling the cloth",
			needle: "Needle: {list}.", foot: "Foot: {list}.", threads: "Thread: {list}.", heat: "Heat: {list}.",
			dotsMean: "One dot is 110 °C at the most, two dots 150 °C, three dots 200 °C (ISO 3758).", steam: "With steam.", then: ", then ", handItem: "Hand needle.", tableItem: "Clear, and large enough for the largest piece.",
			colour: "Colour", kind: "Kind",
			metres: "Length", bobbins: "To wind", threadBasis: "Lengths of thread.", spool: "{colour} ({kind})",
			needleItem: "{needle} for {use}.", toolItem: "{tool}, for the {seams}: {for}.",
			interfacing: "{material} for {pieces}. {heat}", tape: "{material}, {length} in all, for {pieces}. {heat}", selfNote: "Heat: {heat}.",
			notion: "{notion}: {count}, {length} long. {basis}", counted: "{notion}: {count}. {basis}",
		},
		cautions: "Cautions",
		bench: benchWords{
			intro:  "This sheet is for one pair of hands. Each step says how its place is set, what you are handed, what to do, what to measure and what you hand on. Where a check does not come out, ask before you go on.",
			step:   "Step {n} · {title}",
			handed: "You are handed:", from: "{parts} from step {n}", handOn: "You hand on:", to: "{parts} to step {n} ({station})", nobody: "nothing waits for this.",
			sizes:     "{seam} – {construction}; cut with {allowance} of allowance, {finished} wide when finished.",
			allowance: "{seam} – {construction}; cut with {allowance} of allowance.",
			finished:  "{seam} – {construction}; {finished} wide when finished.",
			sewn:      "{seam} – {construction}.",
		},
		class: classWords{
			bands: [7]string{"very easy", "easy", "fairly easy", "plain", "fairly hard", "hard", "very hard"},
			intro: "Everybody in the class works by the same numbers. Do one thing at a time, and tick it when it looks right.",
			step:  "{n} · {title}", show: "Show your work.", showCheck: "Show it with its measure, and go on when it has been seen.", showLast: "Show the finished garment.",
			room: "My notes:", name: "My name, and the date:",
			sides: "The heavy line is the right side of the cloth, here and in every drawing.", sidesAlt: "How the right side of the cloth is drawn",
			rightUp: "right side up", wrongUp: "wrong side up",
			glossary: "Words used here", term: "{term}: {means}",
			ease: "Reading ease of the steps: {figure} of 100, {band} (Flesch 1948; syllables counted by rule).",
		},
		cutting: cuttingWords{
			title: "What to cut", intro: "Cut {pieces} for {garments}. Sizes are of the cut piece with its allowances. A piece cut on the fold is measured opened out.",
			piece: "Piece", cloth: "Cloth", count: "Cut", cut: "How", size: "Width × height", netSize: "At the seam lines", grain: "Grain", sizeNote: "{width} × {height}",
			onFold: "on the fold", pair: "in pairs, face to face", single: "singly, face up", biasWhole: "both halves in one, opened out, in a single layer", turned: "{how}, the other way up than the rest",
			marksTitle: "Marks to transfer:", marksOf: "{piece}: {marks}.",
			edgesTitle: "Edges and their allowances", edge: "Edge", length: "Seam line", allowance: "Allowance", seam: "Belongs to",
			noAllowance: "none", fold: "on the fold, not cut", middle: "the middle of the whole piece, not cut",
			spare:       "{seam}; {spare} of it to be cut off when the piece has hung: {because}",
			stripsTitle: "Strips", strip: "Strip", on: "Cut", cutWidth: "Width", pieces: "Lengths", each: "Each", joins: "Joins each",
			joined: counted{"{strip}: join the lengths into 1 strip, {whole} long, with {joins} ({kind}, {allowance} allowance). The edge it covers is {edge} long.", "{strip}: join the lengths into {strips}, each {whole} long, with {joins} in each ({kind}, {allowance} allowance). The edge that one covers is {edge} long."},
			inOne:  counted{"{strip}: 1 strip, {whole} long, without a join. The edge it covers is {edge} long.", "{strip}: {strips}, each {whole} long, without a join. The edge that one covers is {edge} long."},
			bias:   "on the bias", straight: "on the straight grain", across: "across the knit", biasOf: "Bias {width} wide in {cloth}: {total} in all. From scraps, a square of {square} gives it in {strips}, joined with {join}; one of {round}, made into a tube with joins of {join} and cut round and round, gives it in one.", noJoin: "none",
			interfacingTitle: "Interfacing to cut", steadies: "Steadies", material: "Interfacing", part: "Covers",
			half: "half the width", whole: "the whole", inHem: "a strip in the hem, on the straight grain", inHemBias: "a strip in the hem, on the bias", attach: "{material} for {pieces}. {attach} {trim}", because: "Why: {because}",
			notTaken: "Not {rivals}: {because}", notThese: "Not these, because {because}: {rivals}",
		},
		also: alsoWords{
			own: "This is size 1 of the job; also in it: {sizes}, under What to cut. Figures that differ stand at their step.", size: "size {n} ({garments})",
			title: "Size {n}: {garments}", made: "Made for {size}. It is marked and sewn as size 1 is, but for what is said here and at the steps. Its sewing, changes left out, takes about {minutes}.",
			choices: "Otherwise than size 1 it has {choices}.", measure: "{measure} {used}",
			otherwise: "Sewn in another way than in size 1, where size 1 has that seam:", seam: "{seam}: {construction}. {work}",
			besides: "Besides, in this size:", other: "{part} {text}", part: "{part}.", checks: "Checks of these:",
			sizeLead: "Size {n}:", figures: "{size} {figures}.", instead: "{here} instead of {own}", words: "{size} {text}", without: "{size} leave this out.",
			anotherWay: "{size} sewn as a {construction}, told under What to cut.", expect: "Size {n}: {expect}.",
			drawn: "The pieces of size {n}, drawn {scale}.", edges: "Edges and their allowances, size {n}", chalk: "Points to mark on the cloth, size {n}, as told above",
			sewing: "Sewing, without changes", all: "All sizes together: {garments}", what: "What", much: "How much", strip: "{strip}, {width} wide", area: "{area} cm²", thread: "{thread}, {colour}",
			basis: "Cloth is an estimate, each size laid by itself; a common lay may take less. Interfacing is the area of its pieces. The minutes of the steps are for size 1 alone.",
		},
		chalk: chalkWords{
			title: "Marking straight on the cloth",
			intro: "For cutting without a paper pattern. Square a line across the cloth as the top line. Mark each point so far down from it and so far in, then draw to it from the point before: a depth is measured at the middle of the straight line between the two. What is drawn is the cutting line, allowances included, to within {within}. Measure twice before you cut.",
			piece: "{piece}, in from {from}:", fold: "the fold", middle: "its middle, a line at 45 degrees to the selvedge, on both sides of it", left: "a line along the grain at the left of the piece",
			point: "Point", where: "Where", down: "Down", in: "In", draw: "Draw",
			corner: "{before} meets {after}", along: "along the {before}", bend: "corner at the {before}", again: "back at the first point",
			begin: "begin here", straight: "straight from {n}", hollow: "curve from {n}, {depth} into the piece", round: "curve from {n}, {depth} outwards",
			smooth: "smoothly on from {n}", mark: "mark inside",
		},
		glance: glanceWords{
			title: "Seams at a glance", seam: "Seam", sewn: "Sewn as", class: "ISO class", allowance: "Allowance",
			finished: "Finished", length: "Length", stitches: "Stitches", copies: "{n} × {length}",
			classNote: "The class is that of ISO 4916; stitch numbers are those of ISO 4915.",
			use:       "For the {seams}.",
			anyway:    "You asked for this construction for the {seams}, although it is ruled out there. Try it on scraps first.",
			why:       "Why:", against: "What spoke against it and was outweighed:", worked: "When it is worked:",
			runnersUp: "What else could be done, and why it was not:", ruledOut: "What cannot be done here, with one reason each:",
			untold: "More were weighed; bodkin why, with the job and {seam}, tells of every one.",
			other:  "{rivals}: {because}", others: "Because {because}: {rivals}", only: "{reason} ({seams})", source: "Source: {source}",
		},
		steps: stepWords{
			title: "The steps", intro: "Each step is done at one place with one setting. Tick an operation when it looks right; words in italics say how that is. Do a check before you go on: there it can still be mended.",
			introHands: "Each step is done at one place with one setting. Words in italics say how it looks when right. Do a check before you go on: there it can still be mended.",
			introAll:   "Do each step on all {garments} before you go on to the next; its minutes are for all of them.",
			step:       "Step {n} · {station} · {title}", thread: "thread {thread}", threadBobbin: "thread and bobbin {thread}", threadLoopers: "thread and loopers {thread}",
			bobbin: "bobbin {bobbin}", loopers: "loopers {loopers}", needle: "needle {needle}", foot: "{foot}",
			stitch: "stitch {stitch}, {length}", heat: "heat {heat}", steam: "steam", dry: "dry", about: "about {minutes}",
			setUp: "Set up:", change: "Change:", set: "{what} {to}", setFoot: "{to}", turn: "{what} from {from} to {to}", takes: "Takes {minutes}.",
			right: "Looks right: {good}", after: "Why now: {because}.", check: "Check.", within: "{what}: {expect}, give or take {tolerance}.",
			exactly: "{what}: {expect}.", part: "{part}.", partOf: "{part} ({construction}).", same: "The same.",
			whatThread: "thread", whatBobbin: "bobbin", whatLoopers: "loopers", whatAnd: "{what} and {other}", whatNeedle: "needle", whatFoot: "foot", whatStitch: "stitch", whatHeat: "heat",
			introBrief: "A line a step, each at one place with one setting. Tick it when its figures are right; the full sheet tells every act in words.", oneLine: "{n} · {station}.", onParts: "{parts}: {act}",
			dots: [4]string{"off", "• (one dot, low)", "•• (two dots, medium)", "••• (three dots, high)"},
		},
		order: orderWords{
			title: "Why this order", take: "The changes in this order take {minutes}.",
			how:     "Each machine keeps its thread, needle and foot while you work elsewhere. Operations that need the same setting are done together as far as the garment allows.",
			proved:  "No order of these operations takes less. That is proved.",
			weighed: "No order of these operations takes less, changes and wishes counted together. That is proved.",
			bounded: "No order of these operations can take less than {bound}. Whether any takes less than this one is not proved.",
			more:    "Working seam by seam, each finished before the next, takes {minutes} more for changes.",
			same:    "Working seam by seam, each finished before the next, takes as long for changes.",
			less:    "Working seam by seam, each finished before the next, takes {minutes} less for changes.",
			what:    "Count", here: "This order", seamBySeam: "Seam by seam", minutes: "Minutes of change",
			threads: "Thread changes", stations: "Moves from place to place",
			book: "By the book", wishRegion: "one part at a time", wishSmall: "small parts first", wishDelicate: "delicate edges late", wishFitting: "fitting early",
			wishKept: "Your wish, {wish}, is kept: it is worth {minutes} to you.", wishUnkept: "Your wish, {wish}, is kept in part or not at all: it is worth {minutes} to you, and {paid} of that had to give way to changes that cost more.",
			picked:    "To take up another part counts {minutes} in this room, and the order does so for {paid} in all, besides the changes; less of it would cost more in changes.",
			wishEach:  "Your wish, {wish}: to take up another part counts {minutes}, and the order does so for {paid} in all; less of it would cost more in changes.",
			bookWaits: "{seam}: the book has it before the {other}; here it waits for it, since {because}.", bookNote: "By the book is {title}, each seam finished before the next, worked out in the same way. Its order: {source}.",
			moves:     "Of the {made}, no order avoids {least}: {because}.",
			forcedOne: counted{"One change of {what} ({station}) cannot be avoided: {because}.", "{n} changes of {what} ({station}) cannot be avoided: {because}."},
			kept:      "Your own order is kept. Without it the changes would take {minutes}.",
			refused:   "Your own order is kept where the garment allows it; the notices say where it does not. Without it the changes would take {minutes}.",
		},
		closing: closingWords{notices: "Notices", notice: "{about}: {text}", needle: "Needle {needle}: {source}", notes: "Notes",
			unitsMixed: "The words of the steps give lengths in {words}; the tables give them in {tables}."},
		tools: toolWords{
			tape:        "Tape measure.",
			shears:      "Cutting shears, or rotary cutter with ruler and mat.",
			chalk:       "Chalk or marking pen that has been tried on a scrap.",
			pins:        "Fine pins and a pincushion.",
			gauge:       "Seam gauge for the checks.",
			scissors:    "Small sharp scissors.",
			pinking:     "Pinking shears.",
			pressCloth:  "Press cloth and a scrap of each cloth for testing heat.",
			needleBoard: "Needle board, or a towel or a scrap of the pile cloth.",
			sleeveBoard: "Sleeve board, or a rolled towel in the ring.",
			clapper:     "Clapper, or a smooth block of bare wood.",
			turner:      "Point turner or blunt bone.",
			needle:      "Fine hand needle and thimble.",
			bodkin:      "Bodkin, or a safety pin that closes well.",
		},
		share: shareWords{
			title: "{work}: shared work", fromAfter: "{who}, after {n}", toFor: "{who}, for {n}", setUp: "{m} to set up",
			cutters:     "Whoever cuts has this page at the table: {who}.",
			intro:       "The work on {garment} shared among {n} in {room}. All times count from the beginning at {begins}; all is done after {finish}.",
			begun:       "Of the work {n} are done already and left out here.",
			fewest:      "No sharing ends sooner, and none that ends then has fewer hand-overs: proved.",
			soonest:     "No sharing ends sooner: proved. Fewer hand-overs may be possible.",
			bounded:     "The best that was found; none can end before {bound}.",
			alone:       "{name} alone would need {alone}; the help saves her {saved}.",
			maker:       "For the maker",
			inHand:      "What each has in hand",
			handOvers:   "Hand-over points",
			noHandOvers: "Nothing is handed over.",
			more:        "What one more would change",
			restsOn:     "What these figures rest on",
			give:        "What can be given away",
			giveIntro:   "For a day with one helper only: the most that was found to take off the maker's hands, even where all is not done sooner.",
			giveNothing: "To {name}: nothing that is worth carrying to her in her hours.",
			giveTo:      "To {name}: it takes {m} off the maker's hands, with {n} hand-overs; all is done after {finish}.",
			row:         "{n} of them: a row of tables",
			rowIntro:    "Each person does her part of every garment and passes it on. One garment is {m} of work at the pace of the plan. The minutes of a table are at the pace of the person who sits there, with setting its machines up for each garment; where nobody is named, the row has more tables than the room has people, and they are at the pace of the plan. Trial rows are made once for all and left out. Cut and share out in bundles.",
			noneUnder:   "none under {m}",
			proved:      "proved",
			rateFewest:  "{rate} an hour take {n}: proved to be the fewest.",
			rateFound:   "{rate} an hour take {n} as far as was found; fewer than {b} cannot do it.",
			tables:      "The tables of {n}",
			bench:       "Bench sheet: {name}",
			idle:        "Nothing here asks for her skills in her hours.",
			here:        "Here from {from} to {until}, counted from the beginning. Numbers are the same on every bench.",
			work:        "Your work",
			wait:        "{m} to wait.",
			waitFor:     "{m} to wait, for number {n} by {who}.",
			waitMachine: "{m} to wait until {who} leaves the machine after number {n}.",
			turn:        "{at} · {n} · {machine}: {part}",
			comes:       "Comes from {who}, number {n}.",
			asks:        "Asks for {skill}, level {level}: {why}.",
			handOn:      "Hand on to {who}, number {n}.",
			doneAt:      "Done at {end}.",
			day:         "The day",
			dayCaption:  "Numbers are those of the operations; grey is setting up; hours and minutes from the beginning.",
			dayAlt:      "Who does what when, and when each machine is in use, to scale.",
			who:         "Who",
			operations:  "Operations",
			atWork:      "At work",
			waiting:     "Waiting",
			at:          "At",
			what:        "What",
			from:        "From",
			to:          "To",
			with:        "With",
			doneAfter:   "Done after",
			saves:       "Saves",
			on:          "On",
			takesHer:    "Takes her",
			people:      "People",
			every:       "One every",
			perHour:     "An hour",
			allAfter:    "All after",
			best:        "Best",
			lacks:       "The room lacks",
			table:       "Table",
			takes:       "Takes",
			sits:        "Who",
			ofItSetUp:   "Of it set-ups",
			places:      "Places",
		},
		lesson: lessonWords{
			span: "{first} to {last}", percent: "{n}%",
			intro:         "{garment}, sewn by {n} in {room}. A number is the same act on the same part for everybody; where a number is not for you, you are free until the next.",
			work:          "Session {n}: the work",
			atHome:        "At home after session {n}",
			number:        "{n} · {title}",
			free:          "Free here: {names}.",
			how:           "{how}.",
			who:           "{who}.",
			whoHow:        "{who}: {how}.",
			place:         "{place}.",
			right:         "Looks right: {good}",
			check:         "Check.",
			within:        "{what}: {mm}, give or take {off}.",
			own:           "{name}: your own figures",
			seams:         "Your seams",
			numbers:       "Your numbers",
			notFor:        "Not for you: {numbers}. You are free while the others do them.",
			allFor:        "Every number is for you.",
			otherwise:     "Where others sew it otherwise, yours is:",
			stitchFirst:   "Stitch length {mm}, but where the next line says otherwise.",
			stitch:        "Stitch length {mm}.",
			stitchAt:      "Stitch length {mm} at {numbers}.",
			howAt:         "{how}: numbers {numbers}.",
			change:        "Before number {n}: {machine}, {what} {to}.",
			teacher:       "For the teacher",
			bestFound:     "The best sequence that was found for all together.",
			cheapest:      "No sequence that all can keep takes the class less: proved.",
			spends:        "In this sequence the class spends {all} on changes; each for herself would spend {alone}.",
			ownBest:       "Each student's own best",
			restsOn:       "What these figures rest on",
			about:         "{about}.",
			session:       "Session {n}",
			dated:         "Session {n}: {date}",
			extra:         "One more than the class has: find a time for it, or let students finish at home what they can.",
			meeting:       "Numbers {span}. {up} to set up, {work} for work, {down} to clear. {who} needs longest, about {needs} without waiting. It ends where {rests}.",
			homework:      "At home before the next session: numbers {span}.",
			show:          "Show before it is needed; the time is when the quickest comes to it, counted from the beginning:",
			shown:         "{at} · before number {n}: {what}, about {m}.",
			lookAt:        "Look at what was done at home: numbers {span}.",
			all:           "all",
			wanted:        "{what} for {who}",
			needles:       "{place}, needles: {what}.",
			feet:          "{place}, feet: {what}.",
			heat:          "{place}, heat: {what}.",
			interfacing:   "Interfacing, cut: {what}.",
			notions:       "Notions: {what}.",
			atTable:       "At the table:",
			forShowing:    "For showing: two plies of a scrap for each construction below, and one sewn already to pass round.",
			ready:         "Have ready:",
			thread:        "Thread before they come:",
			changeOver:    "change over",
			showAfter:     "After number {n}: {what}.",
			showWork:      "Let them show their work:",
			lines:         "Where a line forms:",
			groups:        "Let them begin in {n} groups, {m} apart; those who begin later set up, lay out and mark meanwhile. The lines are shorter then.",
			materials:     "Materials for the room",
			interfacings:  "Interfacing and notions",
			nameWhat:      "{name}: {what}.",
			noneAtAll:     "None.",
			needlesTitle:  "Needles",
			cloth:         "Cloth",
			threadTitle:   "Thread",
			sessionColumn: "Session",
			when:          "When",
			numbersColumn: "Numbers",
			homeColumn:    "At home after it",
			seam:          "Seam",
			sewn:          "Sewn as",
			allowance:     "Allowance",
			finished:      "Finished",
			whoColumn:     "Who",
			pace:          "Pace",
			herWork:       "All her work",
			changes:       "Changes here",
			herself:       "By herself",
			machine:       "Machine",
			machines:      "Machines",
			forWhom:       "For",
			placeColumn:   "Place",
			thereAre:      "There are",
			meanWait:      "Mean wait",
			worst:         "Worst",
			most:          "Most waiting",
			inUse:         "In use",
			colour:        "Colour",
			width:         "Width",
			buy:           "Buy about",
			kind:          "Kind",
			together:      "All together",
			bobbins:       "Bobbins",
		},
		sitting: sittingWords{
			made: "Made in one sitting: {each}.", one: "{label} ({garment}, {count})",
			several:     "Where there are several of a garment, do each step on all of them before you go on to the next; its minutes are for all.",
			of:          "{part} ({label})",
			oneLine:     "{n} · {station} · {label}.",
			notes:       "Notes on {label}",
			inTurnMore:  "One garment after the other, each finished before the next is begun, the changes would take {minutes}: {more} more.",
			inTurnSame:  "One garment after the other, each finished before the next is begun, the changes would take as long.",
			inTurnLess:  "One garment after the other, each finished before the next is begun, the changes would take {minutes}: {more} less.",
			inTurnFound: "That is the best that was found of that way; a better one is not ruled out.",
		},
		figures: figureWords{
			mapAlt: "Piece map", mapCaption: "The pieces, drawn {scale}. Solid line: cut. Dashed line: seam, or the leg of a dart. Short line across an allowance: notch. The allowance stands at each edge. Double arrow: lengthwise grain.",
			mapLines: " Dotted line: where a pleat or another detail lies.", mapSteadied: " Grey: interfacing.", mapTaped: " Dark grey along a seam line: tape.",
			lineAlt: "Thread line: what each machine is threaded with at each step", lineCaption: "The thread line. One column a step, one row a machine. Numbered box: in use. Thin band: keeps its thread. Wedge: rethread here.",
			sectionName: "{construction}, {scale}", sectionsCaption: "The ways of sewing, cut across. Along the cloth to the scale named; the plies are drawn apart. Numbers: the rows of stitching.",
			sectionAlt: "{construction}, cut across", sectionCaption: "{construction}, cut across. Along the cloth {scale}; the plies are drawn apart. Numbers: the rows of stitching.",
			stageName: "{letter}: {acts}", stageAlt: "{construction}, cut across, {stage}",
			stagesCaption: "{construction}, cut across, as it lies after each group of acts, the last one finished. Along the cloth {scale}; the plies are drawn apart. Numbers: the rows of stitching; a needle: the row is sewn here.",
			stripAlt:      "{strip}: lengths joined into one strip", stripCaption: "{strip}, joined, {width} wide. Along the strip {scale}; its width is not to scale.",
			sketchAlt: "What was understood of the pieces", whereAlt: "Where it lies, drawn heavy: {seam}",
			knownFront: "front", knownBack: "back", viewFront: "Front", viewBack: "Back",
			rhythmAlt: "Rhythm of the work: at which place it is when", rhythmCaption: "The rhythm of the work. One row a place, a block a stay, lines between them the {moves} moves; time runs to the right, a mark every {every} minutes, changes included.",
			rhythmBar: "Below, how the minutes fall to the places.", rhythmSum: "{trips} ×, {minutes} min", rhythmPart: "{place}, {minutes} min",
			rightSide: "right side of the cloth", foldHere: "fold", joins: "join",
			larger: "{n} times life size", smaller: "1:{n}", lifeSize: "life size",
			plyA: "one piece", plyB: "other piece", plyOnly: "garment", plyStrip: "strip", plyInterfacing: "interfacing", plyElastic: "elastic",
			cutOut: "cut {n}, {how}", edge: "{seam}, {allowance}", noAllowance: "no allowance",
		},
	}
}

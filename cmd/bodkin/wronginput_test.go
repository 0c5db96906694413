package main

import "strings"

// Files that rows of the table below change one thing of.
const (
	goodJob = `make: shell-top
size: {bust: 92 cm, hip: 98 cm}
choices: {length: 62 cm}
cloth:
  main: {is: cotton-lawn, colour: grey, width: 114 cm}
seams: {side: french}
quantity: 1
`
	goodRoom = `name: Back room
machines:
  - {is: straight-stitcher}
iron: steam
`
	squareGarment = `garment: square
title: Square
source: made up for a test
measures: {bust: {title: Bust, how: round the bust, default: 92 cm, least: 70 cm, most: 150 cm}}
cloths: {main: {title: the cloth}}
values:
  wide: bust / 4
pieces:
  - piece: square
    title: Square
    cloth: main
    cut: one
    grain: upright
    points: {a: [0, 0], b: [wide, 0], c: [wide, wide], d: [0, wide]}
    outline:
      - {edge: bottom, from: a, to: b}
      - {edge: right, from: b, to: c}
      - {edge: top, from: c, to: d}
      - {edge: left, from: d, to: a}
edges:
  - {edge: round, title: outer edge, kind: hem, along: [square.bottom, square.right, square.top, square.left], closed: true}
loose: true
`
)

// job is the good job with one line's text replaced.
func job(old, changed string) string {
	if !strings.Contains(goodJob, old) {
		panic("the good job has no " + old)
	}
	return strings.Replace(goodJob, old, changed, 1)
}

// wrongInput is one, with where and in which words it must be told and
// the exit code.
type wrongInput struct {
	name  string
	files map[string]string // in place of, or beside, the good job and workroom
	env   [2]string         // a variable and its value
	args  string            // words of the command line; plan job.yaml -o out.pdf where empty
	at    string            // how standard error begins
	words []string
	code  int

	faults int // how many are told; not counted where 0
}

func wrongInputs() []wrongInput {
	return []wrongInput{
		// The job.
		{name: "unknown garment", files: map[string]string{"job.yaml": job("shell-top", "shel-top")},
			at: "job.yaml:1:7: ", words: []string{`no garment "shel-top"`, `did you mean "shell-top"?`}, code: 2},
		{name: "unknown cloth", files: map[string]string{"job.yaml": job("cotton-lawn", "coton-lawn")},
			at: "job.yaml:5:14: ", words: []string{`"coton-lawn"`, `did you mean "cotton-lawn"?`}, code: 2},
		{name: "unknown role", files: map[string]string{"job.yaml": job("main:", "mian:")},
			at: "job.yaml:5:3: ", words: []string{`"mian"`, `did you mean "main"?`}, code: 2, faults: 1},
		{name: "no cloth", files: map[string]string{"job.yaml": "make: shell-top\n"},
			at: "job.yaml:1:", words: []string{"cloth"}, code: 2},
		{name: "unknown key", files: map[string]string{"job.yaml": job("quantity", "quantitty")},
			at: "job.yaml:7:1: ", words: []string{`did you mean "quantity"?`}, code: 2},
		{name: "unknown unit", files: map[string]string{"job.yaml": job("98 cm", "98 cn")},
			at: "job.yaml:2:26: ", words: []string{`"98 cn"`, "cm"}, code: 2},
		{name: "no unit", files: map[string]string{"job.yaml": job("98 cm", "98")},
			at: "job.yaml:2:26: ", words: []string{"unit"}, code: 2},
		{name: "no unit where others are reckoned from it", files: map[string]string{"job.yaml": job("92 cm", "92")},
			at: "job.yaml:2:14: ", words: []string{"unit"}, code: 2, faults: 1},
		{name: "a unit of another trade", files: map[string]string{"job.yaml": job("98 cm", "98 kg")},
			at: "job.yaml:2:26: ", words: []string{`"98 kg"`}, code: 2},
		{name: "measure missing", files: map[string]string{"job.yaml": "make: ./square.yaml\ncloth: {main: {is: cotton-lawn}}\n",
			"square.yaml": strings.Replace(squareGarment, "default: 92 cm, ", "", 1)},
			at: "job.yaml:1:7: ", words: []string{`the measure "bust" is missing`, "measure round the bust"}, code: 2},
		{name: "measure negative", files: map[string]string{"job.yaml": job("98 cm", "-98 cm")},
			at: "job.yaml:2:26: ", words: []string{"hip"}, code: 2},
		{name: "measure absurd", files: map[string]string{"job.yaml": job("98 cm", "9.8 cm")},
			at: "job.yaml:2:26: ", words: []string{"hip", "78 cm", "150 cm"}, code: 2},
		{name: "measure in inches called cm", files: map[string]string{"job.yaml": job("98 cm", "36 cm")},
			at: "job.yaml:2:26: ", words: []string{"look at the unit"}, code: 2},
		{name: "measure in cm called inches", files: map[string]string{"job.yaml": job("98 cm", "98 in")},
			at: "job.yaml:2:26: ", words: []string{"look at the unit"}, code: 2},
		{name: "unknown measure", files: map[string]string{"job.yaml": job("hip:", "hipp:")},
			at: "job.yaml:2:21: ", words: []string{`did you mean "hip"?`}, code: 2},
		{name: "choice out of range", files: map[string]string{"job.yaml": job("62 cm", "6.2 m")},
			at: "job.yaml:3:19: ", words: []string{"length", "80 cm"}, code: 2},
		{name: "choice of no such word", files: map[string]string{"job.yaml": job("{length: 62 cm}", "{neckline: boot}")},
			at: "job.yaml:3:21: ", words: []string{`did you mean "boat"?`}, code: 2},
		{name: "a neck too small for the head", files: map[string]string{"job.yaml": job("hip: 98 cm", "head: 64 cm, hip: 98 cm")},
			at: "job.yaml:", words: []string{"head", "deeper"}, code: 2},
		{name: "quantity in words", files: map[string]string{"job.yaml": job("quantity: 1", "quantity: some")},
			at: "job.yaml:7:11: ", words: []string{"whole number"}, code: 2},
		{name: "cloth of no width", files: map[string]string{"job.yaml": job("width: 114 cm", "width: 114 m")},
			at: "job.yaml:5:", words: []string{"width"}, code: 2},
		{name: "seam that the garment has not", files: map[string]string{"job.yaml": job("side:", "sides:")},
			at: "job.yaml:6:9: ", words: []string{`did you mean "side"?`}, code: 2},
		{name: "construction of no such name", files: map[string]string{"job.yaml": job("french", "frensh")},
			at: "job.yaml:6:15: ", words: []string{`did you mean "french"?`}, code: 2},
		{name: "construction that the machines rule out", files: map[string]string{"job.yaml": job("french", "overlocked-4")},
			at: "job.yaml:6:15: ", words: []string{"side seam cannot be", "514", "overlocker"}, code: 2},
		{name: "construction that no wish replaces a machine for", files: map[string]string{"job.yaml": job("french", "overlocked-4 anyway")},
			at: "job.yaml:6:15: ", words: []string{"no wish replaces a machine"}, code: 2},
		{name: "construction that the cloth rules out", files: map[string]string{"job.yaml": job("cotton-lawn", "wool-coating")},
			at: "job.yaml:6:15: ", words: []string{"side seam cannot be", "french anyway"}, code: 2},

		// What is no job at all.
		{name: "empty file", files: map[string]string{"job.yaml": ""}, at: "job.yaml", words: []string{"holds nothing"}, code: 2},
		{name: "two documents", files: map[string]string{"job.yaml": goodJob + "---\n" + goodJob}, at: "job.yaml:9:1: ", words: []string{"second document"}, code: 2},
		{name: "a key twice", files: map[string]string{"job.yaml": goodJob + "quantity: 2\n"}, at: "job.yaml:8:1: ", words: []string{"quantity"}, code: 2},
		{name: "a tab", files: map[string]string{"job.yaml": job("  main", "\tmain")}, at: "job.yaml:5:1: ", words: []string{"tab"}, code: 2},
		{name: "not YAML", files: map[string]string{"job.yaml": job("{bust", "bust")}, at: "job.yaml:2:", code: 2},
		{name: "not text", files: map[string]string{"job.yaml": "make: \xff\xfe\n"}, at: "job.yaml:1:7: ", words: []string{"UTF-8"}, code: 2},
		{name: "huge", files: map[string]string{"job.yaml": goodJob + strings.Repeat("# more\n", 200_000)}, at: "job.yaml:1:1: ", words: []string{"1 MiB"}, code: 2},
		{name: "no such file", args: "plan coat.yaml -o out.pdf", at: "bodkin: no file coat.yaml\n", code: 2},
		{name: "a folder", args: "plan folder -o out.pdf", files: map[string]string{"folder/a": ""}, at: "bodkin: folder is a folder\n", code: 2},
		{name: "through a file", args: "plan job.yaml/x.yaml -o out.pdf", at: "bodkin: cannot read job.yaml/x.yaml: ", code: 2},

		// A garment of one's own.
		{name: "garment file missing", files: map[string]string{"job.yaml": job("shell-top", "./mine.yaml")},
			at: "job.yaml:1:7: ", words: []string{"no file mine.yaml"}, code: 2},
		{name: "garment file is a folder", files: map[string]string{"job.yaml": job("shell-top", "./mine"), "mine/a": ""},
			at: "job.yaml:1:7: ", words: []string{"mine is a folder"}, code: 2},
		{name: "garment with an unknown key", files: map[string]string{"job.yaml": squareJob, "square.yaml": squareGarment + "lose: true\n"},
			at: "square.yaml:23:1: ", words: []string{`did you mean "loose"?`}, code: 2},
		{name: "garment with a formula that cannot be read", files: map[string]string{"job.yaml": squareJob, "square.yaml": strings.Replace(squareGarment, "bust / 4", "bust / * 4", 1)},
			at: "square.yaml:7:", code: 2},
		{name: "garment with a formula over an unknown name", files: map[string]string{"job.yaml": squareJob, "square.yaml": strings.Replace(squareGarment, "bust / 4", "bost / 4", 1)},
			at: "square.yaml:7:9: ", words: []string{"bust"}, code: 2},
		{name: "garment with a formula that fails at this size", files: map[string]string{"job.yaml": squareJob, "square.yaml": strings.Replace(squareGarment, "bust / 4", "bust / (bust - bust)", 1)},
			at: "square.yaml:7:", code: 2},
		{name: "garment with values in a circle", files: map[string]string{"job.yaml": squareJob, "square.yaml": strings.Replace(squareGarment, "  wide: bust / 4", "  wide: long / 4\n  long: wide * 4", 1)},
			at: "square.yaml:7:", words: []string{"wide", "long"}, code: 2},
		{name: "garment whose work goes round in a circle", files: map[string]string{"job.yaml": "make: circular.yaml\ncloth: {main: {is: cotton-lawn}}\n"},
			at: "circular.yaml:", words: []string{"can have no order", "waits for", "because", "let one of them go"}, code: 2},

		// The workroom.
		{name: "unknown machine", files: map[string]string{"workroom.yaml": strings.Replace(goodRoom, "straight-stitcher", "straight-sticher", 1)},
			at: "workroom.yaml:3:10: ", words: []string{`did you mean "straight-stitcher"?`}, code: 2},
		{name: "unknown key of a workroom", files: map[string]string{"workroom.yaml": strings.Replace(goodRoom, "machines", "machine", 1)},
			at: "workroom.yaml:2:1: ", words: []string{`did you mean "machines"?`}, code: 2},
		{name: "unknown iron", files: map[string]string{"workroom.yaml": strings.Replace(goodRoom, "steam", "steem", 1)},
			at: "workroom.yaml:4:7: ", words: []string{`did you mean "steam"?`}, code: 2},
		{name: "house figure of no such name", files: map[string]string{"workroom.yaml": goodRoom + "house: {frensh_second: 5 mm}\n"},
			at: "workroom.yaml:5:9: ", words: []string{`did you mean "french_second"?`}, code: 2},
		{name: "workroom named and not there", args: "plan job.yaml -o out.pdf --workroom room.yaml", at: "bodkin: no file room.yaml\n", code: 2},
		{name: "workroom that is a folder", args: "plan job.yaml -o out.pdf --workroom folder", files: map[string]string{"folder/a": ""}, at: "bodkin: folder is a folder\n", code: 2},

		// The shelf.
		{name: "shelf formula that cannot be read", files: map[string]string{"own.yaml": needle("cloth.weight <")},
			args: "plan job.yaml -o out.pdf --shelf own.yaml", at: "own.yaml:3:", code: 2},
		{name: "shelf formula over an unknown name", files: map[string]string{"own.yaml": needle("cloth.wieght < 90")},
			args: "plan job.yaml -o out.pdf --shelf own.yaml", at: "own.yaml:3:", words: []string{"weight"}, code: 2},
		{name: "shelf entry without a source", files: map[string]string{"own.yaml": "- cloth: bare\n  title: Bare\n"},
			args: "plan job.yaml -o out.pdf --shelf own.yaml", at: "own.yaml:1:", words: []string{"source"}, code: 2},

		{name: "shelf formula that fails on this cloth", files: map[string]string{"own.yaml": needle("cloth.weight / (cloth.weight - cloth.weight) > 1")},
			args: "plan job.yaml -o out.pdf --shelf own.yaml", at: "own.yaml:3:", words: []string{"division by zero"}, code: 2},

		// Signs that the PDF's typeface does not have.
		{name: "signs the typeface has not", files: map[string]string{"job.yaml": job("grey", "grey 🧵") + "notes: |\n  Take the 縫 thread.\n"},
			at: "job.yaml:5:40: ", words: []string{"'🧵' (U+1F9F5)", "job.yaml:9:12: ", "Markdown, which may hold any sign"}, code: 2},
		{name: "a sign of the shelf the typeface has not", files: map[string]string{"job.yaml": job("cotton-lawn", "grey-lawn"), "own.yaml": lawn("Grey 縫 lawn")},
			args: "plan job.yaml -o out.pdf --shelf own.yaml", at: "own.yaml:2:15: ", words: []string{"縫"}, code: 2},

		// The command line.
		{name: "unknown command", args: "plna", at: "bodkin: no command \"plna\"\n  did you mean \"plan\"?\n", code: 2},
		{name: "unknown flag", args: "plan --papr a4", at: "bodkin: no flag --papr\n  did you mean \"--paper\"?\n", code: 2},
		{name: "unknown short flag", args: "plan -x", at: "bodkin: no flag -x\n", code: 2},
		{name: "flag without its value", args: "plan -o", at: "bodkin: --output needs a FILE after it\n", code: 2},
		{name: "flag with a value it cannot have", args: "list cloth --json=perhaps", at: "bodkin: --json cannot be \"perhaps\"\n", code: 2},
		{name: "bad flag syntax", args: "plan ---", at: "bodkin: bad flag syntax", code: 2},
		{name: "one argument too many", args: "plan job.yaml coat.yaml", at: "bodkin: plan cannot take \"coat.yaml\" as well\n  usage: bodkin plan [JOB] [-o FILE]\n", code: 2},
		{name: "unknown units", args: "plan --units mm", at: "bodkin: --units cannot be \"mm\"\n", words: []string{"cm, in"}, code: 2},
		{name: "unknown paper", args: "plan --paper leter", at: "bodkin: --paper cannot be \"leter\"\n  did you mean \"letter\"?\n", code: 2},
		{name: "type too large for the paper", args: "plan --within 0s --paper a5 --type-size 24 -o sheet.pdf", at: "bodkin: --type-size: type of 24 pt is too large", words: []string{"17 at the most"}, code: 2},
		{name: "type nobody can read", args: "plan --type-size 2", at: "bodkin: --type-size cannot be \"2\"\n", code: 2},
		{name: "type size that is no number", args: "plan --type-size NaN", at: "bodkin: --type-size cannot be \"NaN\"\n", code: 2},
		{name: "time without a unit", args: "plan --within 3", at: "bodkin: --within cannot be \"3\"\n", code: 2},
		{name: "time before now", args: "plan --within -3s", at: "bodkin: --within cannot be \"-3s\"\n", code: 2},
		{name: "time without a unit in a variable", env: [2]string{"BODKIN_WITHIN", "3"}, at: "bodkin: BODKIN_WITHIN cannot be \"3\"\n", code: 2},
		{name: "workroom of a variable not there", env: [2]string{"BODKIN_WORKROOM", "room.yaml"}, at: "bodkin: no file room.yaml\n", code: 2},

		// Right, but it cannot be done.
		{name: "output in no folder", args: "plan job.yaml -o nowhere/out.pdf", at: "bodkin: cannot write nowhere/out.pdf: there is no folder nowhere\n", code: 1},
		{name: "output that is a folder", args: "plan job.yaml -o taken.pdf", files: map[string]string{"taken.pdf/a": ""}, at: "bodkin: cannot write taken.pdf: it is a folder\n", code: 1},
		{name: "allowance that the shape has no room for", files: map[string]string{"workroom.yaml": goodRoom + "house: {french_second: 200 mm}\n"},
			at: "bodkin: cannot make the front\n", words: []string{"allowance is too wide"}, code: 1},
	}
}

const squareJob = "make: square.yaml\ncloth: {main: {is: cotton-lawn}}\n"

// needle is a needle rule with a condition.
func needle(when string) string {
	return "- needle: odd-90\n  title: Odd 90/14\n  when: \"" + when + "\"\n  nm: 90\n  us: 14\n  point: sharp\n  stitch_mm: 2.5\n  source: made up for a test\n"
}

// lawn is a cloth with a title.
func lawn(title string) string {
	return "- cloth: grey-lawn\n  title: " + title + `
  fibre: cotton
  structure: woven
  weight: 72
  thickness: 0.18
  sheerness: 1
  fraying: 1
  slip: 0
  heat_dots: 3
  steam: true
  widths: [114 cm]
  source: made up for a test
`
}

package seams_test

import (
	"strings"
	"testing"

	"bodkin/seams"
	"bodkin/seams/form"
)

// entryWith is a small construction of the user's with one line changed.
func entryWith(was, is string) string {
	const good = `- construction: mine
  title: Mine
  for: join
  kind: seam
  iso4916: {class: 1}
  stitches: ["301"]
  inside: enclosed
  sizes:
    first: "workroom.house('mine', 6)"
    second: "first"
    turn: "cloth.thickness"
    trim: "3"
  allowance: "first + second + turn"
  finished: "second"
  strip: {on: bias, width: "4 * second"}
  ruled_out:
    - {when: "cloth.knit", because: "it is knitted"}
  speaks_for:
    - {when: "cloth.sheer", worth: 2, because: "it is sheer"}
  passes:
    - does: stitch
      stitch: "301"
      text: "Stitch {first} from the edge of the {a}."
  checks:
    - {after_pass: 1, what: "row", expect: "first", tolerance: "1.5"}
  figure:
    - {ply: a, through: [["0", "0"], ["second", "0"]]}
    - {stitch: "301", through: [["0", "0"], ["0", "1"]]}
    - {size: second, through: [["0", "2"], ["second", "2"]]}
  source: mine
`
	if was == "" {
		return good
	}
	if !strings.Contains(good, was) {
		panic("no such text: " + was)
	}
	return strings.Replace(good, was, is, 1)
}

func TestFaultsOfEntries(t *testing.T) {
	load(t, seams.File{Name: "mine.yaml", Data: []byte(entryWith("", ""))})
	cases := []struct{ was, is, want string }{
		{"  source: mine\n", "", `mine.yaml:1:3: the key "source" is missing`},
		{`stitches: ["301"]`, `stitches: ["310"]`, `mine.yaml:6:14: "310" is no stitch on the shelf; did you mean "301"?`},
		{"does: stitch\n", "does: stich\n", `mine.yaml:21:13: "stich" is no act on the shelf; did you mean "stitch"?`},
		{`      stitch: "301"` + "\n", "", `mine.yaml:21:7: stitch is done on a machine and needs a stitch`},
		{`      stitch: "301"` + "\n", `      stitch: "301"` + "\n      run: round\n", `mine.yaml:23:12: "round" is no size`},
		{`      stitch: "301"` + "\n", "      stitch: slip\n", `mine.yaml:22:15: slip is sewn by hand, and stitch is done at the machine`},
		{"kind: seam", "kind: hem", `mine.yaml:4:9: "hem" is no kind for join`},
		{"for: join", "for: jion", `mine.yaml:3:8: "jion" is not one of join, edge, detail; did you mean "join"?`},
		{"inside: enclosed", "inside: closed", `mine.yaml:7:11: "closed" is not one of enclosed, neatened, raw`},
		{"{class: 1}", "{class: 9}", `mine.yaml:5:20: class must be from 1 to 8`},
		{"    trim: ", "    cloth: ", `mine.yaml:12:5: the name is taken`},
		{"    trim: ", "    min: ", `mine.yaml:12:5: the name has a meaning in formulas`},
		{"worth: 2, ", "", `mine.yaml:19:7: a rule under speaks_for needs a worth`},
		{`because: "it is knitted"`, `worth: 1, because: "it is knitted"`, `mine.yaml:17:35: a rule that rules out has no worth`},
		{"{first} from", "{frist} from", `mine.yaml:23:13: {frist} is no size of this construction; did you mean "first"?`},
		{"after_pass: 1", "after_pass: 2", `mine.yaml:25:20: after_pass must be from 1 to 1`},
		{"{ply: a, ", "{ply: c, ", `mine.yaml:27:13: "c" is not one of a, b, strip`},
		{"{ply: a, ", "{", `mine.yaml:27:7: a line of the figure is a ply, a stitch or a size`},
		{`["0", "1"]]}`, `["0", "1"], ["0", "2"]]}`, `mine.yaml:28:32: a stitch or a size runs through two points`},
		{"{size: second", "{size: secnd", `mine.yaml:29:14: "secnd" is no size of this construction; did you mean "second"?`},
		{`["second", "0"]]}`, `["second"]]}`, `mine.yaml:27:38: a point has two numbers`},
		{`"cloth.knit"`, `"cloth.kint"`, `mine.yaml:17:21: unknown name "kint" after the point; did you mean "knit"?`},
		{`second: "first"`, `second: "third"`, `mine.yaml:10:14: unknown name "third"`},
		{`first: "workroom.house('mine', 6)"`, `first: "second"`, `mine.yaml:9:13: unknown name "second"`},
		{"- construction: mine\n", "- constriction: mine\n", `mine.yaml:1:3: an entry starts with its kind, not with "constriction"; did you mean "construction"?`},
		{"  inside: enclosed", "  tools: [needle bord]\n  inside: enclosed", `mine.yaml:7:11: "needle bord" is no tool on the shelf; did you mean "needle board"?`},
		{"{on: bias", "{on: byas", `mine.yaml:15:15: "byas" is not one of bias, straight, shaped; did you mean "bias"?`},
	}
	var texts []string
	for _, c := range cases {
		texts = append(texts, entryWith(c.was, c.is))
	}
	for i, fs := range faultsApart(t, texts) {
		c := cases[i]
		if len(fs) == 0 || !strings.HasPrefix(fs[0].Error(), c.want) || fs[0].SourceLine == "" || !mended(fs[0]) {
			t.Errorf("%q for %q:\n%v\nwant\n%s", c.is, c.was, fs, c.want)
		}
	}
}

// mended reports whether a fault tells how to mend it.
func mended(f form.Fault) bool { return f.Mend != "" || f.Nearest != "" }

func TestFaultsOfMaterials(t *testing.T) {
	cases := []struct{ data, want string }{
		{ownCloth + ownCloth, `mine.yaml:21:3: "silk-georgette" stands here twice; keep one of the two; the first is at mine.yaml:2:3`},
		{strings.Replace(ownCloth, "weight: 61", "weight: 61000", 1), "mine.yaml:6:11: weight must be from 5 to 2000 g/m²"},
		{strings.Replace(ownCloth, "heat_dots: 1", "heat_dots: 0\n  steam: true", 1), "mine.yaml:9:10: a cloth that must not be ironed cannot be steamed"},
		{strings.Replace(ownCloth, "widths: [130 cm]", "widths: [130 cm]\n  estimates: [wieght]", 1), `mine.yaml:10:15: "wieght" is no key of this entry; did you mean "weight"?`},
		{strings.Replace(ownCloth, "130 cm", "130", 1), `mine.yaml:9:12: "130" has no unit`},
		{strings.Replace(ownCloth, "130 cm", "13 mm", 1), "mine.yaml:9:12: a cloth is from 10 cm to 5 m wide"},
		{strings.Replace(ownNeedle, "us: 10", "us: 11", 1), "mine.yaml:6:7: needle NM 70 is not US 11"},
		{strings.Replace(ownNeedle, "weight > 0", "weight > ", 1), "mine.yaml:4:24: the formula ends too early"},
		{"- thread: t\n  title: T\n  tex: 30\n  ticket: 30\n  source: s\n", "mine.yaml:4:11: ticket 30 does not go with tex 30"},
		{"- machine: m\n  title: M\n  kind: machine\n  forms: [\"301\", \"333\"]\n  speed: 100\n  threads: 1\n  feet: [f]\n  source: s\n", `mine.yaml:4:18: "333" is no stitch on the shelf`},
		{"- machine: m\n  title: M\n  kind: iron\n  source: s\n", "mine.yaml:1:3: an iron that gives no heat"},
		{"- interfacing: i\n  title: I\n  fusible: true\n  weight: 50\n  width: 900\n  trim: t\n  attach: a\n  source: s\n", "mine.yaml:1:3: a fusible needs heat"},
		{"- act: a\n  title: A\n  station: table\n  basis: b\n  caution: irom\n  source: s\n", `mine.yaml:5:12: "irom" is no caution on the shelf; did you mean "iron"?`},
		{"- stitch: x\n  title: X\n  ratio: 2\n  ratio_source: r\n  source: s\n", "mine.yaml:1:3: a stitch needs at least one thread"},
		{strings.Replace(ownNeedle, "point: sharp", "point: twin", 1), "mine.yaml:2:3: a twin needle, and no other, has two points apart"},
		{"- interfacing: i\n  title: I\n  for: seam\n  weight: 50\n  width: 900\n  trim: t\n  attach: a\n  source: s\n", "mine.yaml:5:10: width must be from 2 to 60 mm"},
		{strings.Replace(ownCloth, "  source: measured\n", "  differ:\n    - {on: its weight, of: weight, least: 70, most: 60, says: [\"60 or 70: two shops\"]}\n  source: measured\n", 1), `mine.yaml:11:43: sources that differ from 70 to 60 do not differ`},
		{strings.Replace(ownCloth, "  source: measured\n", "  differ:\n    - {on: its weight, least: 60, most: 70, says: [\"60 or 70: two shops\"]}\n  source: measured\n", 1), `mine.yaml:11:12: a range of what?`},
		{ownStay("for: [hemm]"), `mine.yaml:3:9: "hemm" is no kind of construction on the shelf; did you mean "hem"?`},
		{ownStay("for: [hem]\n  with: strip\n  cut: bias\n  text: t\n  made_as: [blind-stiched]"), `mine.yaml:7:13: "blind-stiched" is no construction of these kinds on the shelf; did you mean "blind-stitched"?`},
		{ownStay("for: [hem]\n  with: strip\n  made_as: [blind-stitched]\n  cut: bias"), `mine.yaml:1:9: s asks for a strip and has no text`},
		{ownStay("for: [hem]\n  cut: bias"), `mine.yaml:4:8: cut: is for a strip, and s asks for a tape`},
		{ownStay("for: [hem]\n  with: stripe"), `mine.yaml:4:9: "stripe" is not one of tape, strip; did you mean "strip"?`},
		{"- tool: t\n  title: T\n  for: f\n  caution: blad\n  source: s\n", `mine.yaml:4:12: "blad" is no caution on the shelf; did you mean "blade"?`},
		{"- pressing: p\n  title: P\n  when: \"cloth.knti\"\n  side: wrong\n  cloth: none\n  moves: lift\n  text: t\n  good: g\n  source: s\n", `mine.yaml:3:16: unknown name "knti" after the point; did you mean "knit"?`},
		{"- pressing: p\n  title: P\n  when: \"true\"\n  side: none\n  cloth: none\n  over: neddle board\n  moves: slide\n  text: t\n  good: g\n  source: s\n", `mine.yaml:6:9: "neddle board" is no tool on the shelf; did you mean "needle board"?`},
		{"- machine: m\n  title: M\n  kind: machine\n  forms: [\"301\"]\n  speed: 900\n  max_speed: 800\n  threads: 1\n  feet: [f]\n  source: s\n", "mine.yaml:6:14: it is run faster than it is built for"},
		{strings.Replace(ownCloth, "weight: 61\n", "weight: 61 g\n", 1), "mine.yaml:6:11: "},
		{strings.Replace(ownCloth, "structure: woven", "structure: wovn", 1), `mine.yaml:5:14: "wovn" is not one of woven, knit, nonwoven; did you mean "woven"?`},
		{strings.Replace(ownCloth, "  weight: 61\n", "  wieght: 61\n", 1), `mine.yaml:6:3: unknown key "wieght"; did you mean "weight"?`},
		{strings.Replace(ownCloth, "  source: measured\n", "", 1), `mine.yaml:2:3: the key "source" is missing`},
		{"- interfacing: i\n  title: I\n  weight: 50\n  width: 900\n  heat_dots: 2\n  trim: t\n  attach: a\n  source: s\n", "mine.yaml:5:14: an interfacing that is sewn in needs no heat"},
		{"- interfacing: i\n  title: I\n  self: true\n  weight: 50\n  trim: t\n  attach: a\n  source: s\n", "mine.yaml:3:9: the garment's own cloth has its own weight"},
		{"- machine: m\n  title: M\n  kind: iron\n  max_dots: 2\n  forms: [\"301\"]\n  source: s\n", "mine.yaml:5:10: an iron forms no stitches"},
		{"- machine: m\n  title: M\n  kind: hand\n  forms: [slip]\n  steam: true\n  source: s\n", "mine.yaml:1:3: max_dots and steam are for irons"},
		{"- pressing: p\n  title: P\n  when: \"true\"\n  side: none\n  cloth: none\n  moves: slide\n  text: t\n  good: g\n  source: s\n", "mine.yaml:6:10: an iron that touches neither side cannot slide"},
		{"cloth: x\n", "mine.yaml:1:1: a shelf file is a list of entries"},
		{"- x\n", `mine.yaml:1:3: an entry starts with its kind, not with ""`},
		{"- [\n", "mine.yaml:1:3: this list is opened with [ and never closed"},
	}
	var texts []string
	for _, c := range cases {
		texts = append(texts, c.data)
	}
	for i, fs := range faultsApart(t, texts) {
		if len(fs) == 0 || !strings.HasPrefix(fs[0].Error(), cases[i].want) || !mended(fs[0]) {
			t.Errorf("%q:\n%v\nwant\n%s", cases[i].data, fs, cases[i].want)
		}
	}
}

// ownStay is a stay with these lines after its title.
func ownStay(lines string) string {
	return "- stay: s\n  title: S\n  " + lines + "\n  when: \"true\"\n  because: b\n  source: s\n"
}

package seams_test

import (
	"strings"
	"testing"

	"bodkin/seams"
)

// What a dressmaker meets in ten years stands on the shelf, by name: cloths,
// stitches of ISO 4915 and of the hand, what forms them, constructions in every
// family, what stiffens and steadies, tools.
func TestStock(t *testing.T) {
	s := load(t)
	find := map[string]func(string) error{
		"cloth":        func(name string) error { _, err := s.Cloth(name); return err },
		"stitch":       func(name string) error { _, err := s.Stitch(name); return err },
		"machine":      func(name string) error { _, err := s.Machine(name); return err },
		"construction": func(name string) error { _, err := s.Construction(name); return err },
		"interfacing":  func(name string) error { _, err := s.Interfacing(name); return err },
		"tool":         func(name string) error { _, err := s.Tool(strings.ReplaceAll(name, "_", " ")); return err },
	}
	for _, row := range []struct{ kind, family, names string }{
		{"cloth", "sheers", "silk-chiffon silk-georgette silk-organza cotton-voile tulle cotton-organdie"},
		{"cloth", "silks and satins", "silk-habotai silk-satin silk-crepe-de-chine silk-dupion silk-taffeta polyester-satin"},
		{"cloth", "cottons", "cotton-lawn cotton-batiste cotton-poplin quilting-cotton wax-print cotton-sateen seersucker double-gauze cotton-flannelette cotton-corduroy cotton-velveteen denim-light denim cotton-canvas cotton-drill"},
		{"cloth", "linens and viscose", "linen-light linen-medium viscose-challis viscose-twill"},
		{"cloth", "wools", "wool-crepe wool-flannel wool-suiting wool-tweed wool-coating boiled-wool"},
		{"cloth", "synthetics", "polyester-crepe polyester-lining microfibre"},
		{"cloth", "knits", "cotton-jersey viscose-jersey cotton-interlock cotton-rib ponte sweatshirt polar-fleece swimwear-knit stretch-mesh"},
		{"cloth", "pile, lace, coated", "velvet cotton-lace faux-leather faux-fur"},
		{"stitch", "ISO 4915", "101 102 103 104 301 304 308 315 401 406 407 503 504 505 512 514 515 516 602 605"},
		{"stitch", "by hand", "202 204 205 209 slip fell blanket rolled"},
		{"machine", "of the house", "straight-stitcher zigzag-machine overlocker-3 overlocker-4 coverstitch blindstitcher iron hand"},
		{"machine", "of the factory", "industrial-lockstitch safety-stitcher industrial-coverstitch chainstitcher steam-press"},
		{"tool", "that constructions need", "bias_tape_maker sleeve_board needle_board point_turner rotary_cutter"},
		{"construction", "plain seams and their finishes", "plain-open-pinked plain-open-zigzagged plain-open-overlocked plain-together-overlocked plain-together-zigzagged plain-together-bound plain-together-pinked plain-open-clean-finished plain-open-bound plain-open-folded-bound self-bound"},
		{"construction", "further seams", "french mock-french flat-felled mock-felled welt lapped tucked slot hairline double-stitched taped narrow-zigzag straight-and-zigzag overlocked-3 overlocked-4 safety-stitched piped gathered ease-stitched set-in-sleeve crotch gusset yoke lace-applique"},
		{"construction", "hems", "narrow-double-fold narrow-by-hand baby-hem hand-rolled deep-double-fold blind-stitched hand-hemmed faced-hem circular-hem coverstitched zigzag-hem twin-needle two-row-knit rolled-by-foot rolled-overlocked lettuce topstitched-single"},
		{"construction", "other edges", "bias-bound-single bias-bound-double bias-turned-inside faced-edge bias-faced self-faced folded-band knit-band elastic-casing drawstring-casing"},
		{"construction", "fullness", "dart double-pointed-dart dart-sheer tuck pleat gathers"},
		{"construction", "pockets and openings", "patch-pocket in-seam-pocket slanted-pocket placket-bound placket-faced zip-lapped zip-centred zip-invisible zip-exposed vent"},
		{"construction", "fastenings", "buttonhole-machine buttonhole-by-hand button hook-and-eye snap tie loop"},
		{"construction", "collars, bands, linings", "stand-collar flat-collar shirt-collar cuff waistband lining-bagged lining-felled"},
		{"interfacing", "all kinds", "light-woven-fusible fusible-knit light-nonwoven-fusible medium-nonwoven-fusible weft-fusible medium-sew-in silk-organza self-fabric hair-canvas stay-tape clear-elastic wash-away-tape"},
	} {
		for _, name := range strings.Fields(row.names) {
			if err := find[row.kind](name); err != nil {
				t.Errorf("%s: %v", row.family, err)
			}
		}
	}
	for what, n := range map[string][2]int{
		"cloths": {len(s.Cloths), 45}, "machines": {len(s.Machines), 16}, "constructions": {len(s.Constructions), 55}, "interfacings": {len(s.Interfacings), 14},
	} {
		if n[0] < n[1] {
			t.Errorf("%d %s, want at least %d", n[0], what, n[1])
		}
	}
}

// A figure that rests on nothing published says so: who reads an entry finds
// memory, common practice, an estimate or a source beside it, and no full
// designation of ISO 4916 stands anywhere but under from_memory.
func TestFiguresOwnWhatTheyRestOn(t *testing.T) {
	s := load(t)
	for _, c := range s.Cloths {
		for _, key := range c.Estimates {
			if key == "weight" && !strings.Contains(c.Source, "memory") && !strings.Contains(c.Source, "common practice") && !strings.Contains(c.Source, "estimate") {
				t.Errorf("%s: its weight is an estimate, and its source does not own it: %s", c.Name, c.Source)
			}
		}
	}
	for _, st := range s.Stitches {
		if st.RatioSource == "" || st.Hand && !strings.Contains(st.RatioSource, "estimate") {
			t.Errorf("%s: thread by hand is an estimate, and nothing says so: %s", st.Name, st.RatioSource)
		}
	}
	entries, err := seams.Entries("construction")
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range entries {
		for line := range strings.Lines(e.Text) {
			if strings.Contains(line, "iso4916:") && strings.Contains(line, ".0") && !strings.Contains(line, "from_memory:") {
				t.Errorf("%s: a designation that no source shows: %s", e.Name, line)
			}
		}
	}
}

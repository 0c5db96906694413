package main

import (
	"os"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// sittingFiles are two jobs that ask for all that a job may ask of an order, and
// their room.
func sittingFiles() map[string]string {
	return map[string]string{
		"top.yaml": `make: shell-top
title: Lake top
size: {bust: 88 cm}
cloth:
  main: {is: silk-georgette, colour: grey, width: 114 cm}
  binding: {is: silk-satin, colour: white, width: 114 cm}
order: [side, shoulder]
wishes: {small: 1, region: 0.5}
notes: "Mind the *hem*."
`,
		"skirt.yaml": `make: pull-on-skirt
title: Lake skirt
quantity: 2
also: [{size: {waist: 90 cm, hip: 114 cm}}]
cloth:
  main: {is: cotton-lawn, colour: white, width: 114 cm}
pins: [hem before waist]
machines: {overlocker-3: {leave: white}}
cones: {white: 2, grey: 3}
`,
		"workroom.yaml": "name: Boat house\nmachines: [{is: straight-stitcher, threaded: white}, {is: overlocker-3}]\niron: steam\n",
	}
}

// The same jobs give the same bytes in every form, of the whole and of a rest.
func TestSittingSameBytes(t *testing.T) {
	alone(t)
	write(t, sittingFiles())
	ends := endings()
	for _, w := range tableWords() {
		ends = append(ends, "."+w+".csv")
	}
	for _, folder := range []string{"a", "b"} {
		if err := os.Mkdir(folder, 0o777); err != nil {
			t.Fatal(err)
		}
		for _, end := range ends {
			must(t, "sitting", "top.yaml", "skirt.yaml", "--within", "0s", "-o", folder+"/both"+end)
		}
		must(t, "sitting", "top.yaml", "skirt.yaml", "--within", "0s", "--done", "1-2", "--for", "bench", "-o", folder+"/rest.pdf")
	}
	first, second := contents(t, "a"), contents(t, "b")
	if len(first) < len(ends)+10 { // and figures
		t.Errorf("only %d files", len(first))
	}
	if d := cmp.Diff(first, second); d != "" {
		t.Errorf("two runs differ:\n%.2000s", d)
	}
}

// A sitting with all that jobs may ask for fits its schema, and so does its rest;
// the plans in it fit that of a plan, and a step of no garment or a lack is refused.
func TestSittingFitsSchema(t *testing.T) {
	alone(t)
	write(t, sittingFiles())
	s := compiled(t, "sitting")
	for _, args := range [][]string{nil, {"--done", "1-2,2/side"}, {"--units", "in"}} {
		written := must(t, append([]string{"sitting", "top.yaml", "skirt.yaml", "--within", "0s", "--json"}, args...)...)
		if err := fitsJSON(t, s, written); err != nil {
			t.Errorf("%v: %v", args, err)
		}
		for _, x := range [][2]string{
			{`"schema": "bodkin-sitting-1"`, `"schema": "bodkin-plan-1"`},
			{`"schema": "bodkin-plan-1"`, `"schema": "bodkin-plan-9"`},
			{`"in_turn_minutes": `, `"in_turn": `},
			{`"garments": [`, `"garments": ["1", `},
			{`"units": `, `"unit": `},
			{`"label": "Lake top"`, `"label": 1`},
		} {
			wrong := strings.Replace(written, x[0], x[1], 1)
			if wrong == written {
				t.Fatalf("%v: it has no %s", args, x[0])
			}
			if fitsJSON(t, s, wrong) == nil {
				t.Errorf("%v: %s in the place of %s is not refused", args, x[1], x[0])
			}
		}
	}
}

// What is wrong with the jobs of a sitting is told with exit code 2, in one error
// with the place of each, and nothing is written.
func TestSittingWrongInput(t *testing.T) {
	for _, tt := range []struct {
		name, old, changed string // of the skirt
		args               string
		at                 string
		holds              []string
	}{
		{"pins of one job contradict", "[hem before waist]", "[hem before waist, waist before hem]", "",
			"skirt.yaml:7:26: the pin \"waist before hem\" cannot be kept: waist.1 waits for hem.",
			[]string{"because you pinned “hem before waist”", "let one of them go"}},
		{"no such seam", "hem before waist", "hem before wiast", "", "skirt.yaml:7:8: ", []string{`did you mean "waist"?`}},
		{"no such machine", "overlocker-3", "overlocker-33", "", "skirt.yaml:8:12: ", []string{`did you mean "overlocker-3"?`}},
		{"steps that are not there", "", "", "--done 1-999", "bodkin: --done names steps 1-999", []string{"the steps run from 1 to"}},
		{"a seam of neither", "", "", "--done 3/side", "bodkin: the plan has no seam, operation or step \"3/side\"", []string{"did you mean"}},
		{"a table without a name", "", "", "-o both.csv", "bodkin: both.csv does not say which table it is to be", []string{".operations.csv"}},
		{"type too large", "", "", "-o both.pdf --paper a5 --type-size 24", "bodkin: --type-size: ", []string{"at the most"}},
	} {
		t.Run(tt.name, func(t *testing.T) {
			alone(t)
			files := sittingFiles()
			files["skirt.yaml"] = strings.Replace(files["skirt.yaml"], tt.old, tt.changed, 1)
			write(t, files)
			args := append([]string{"sitting", "top.yaml", "skirt.yaml", "--within", "0s"}, strings.Fields(tt.args)...)
			if !strings.Contains(tt.args, "-o ") {
				args = append(args, "-o", "both.pdf")
			}
			r := call(t.Context(), "", args...)
			if r.code != exitInput || !strings.HasPrefix(r.complaint(), tt.at) || strings.Count(r.complaint(), "\nskirt.yaml:") > 0 {
				t.Errorf("exit code %d\n%s", r.code, r.err)
			}
			for _, w := range tt.holds {
				if !strings.Contains(r.err, w) {
					t.Errorf("it does not say %q:\n%s", w, r.err)
				}
			}
			if left := contents(t, "."); len(left) != len(files) {
				t.Errorf("%d files where %d were", len(left), len(files))
			}
		})
	}
}

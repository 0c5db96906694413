package main

import (
	"bytes"
	"context"
	"encoding/json"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"bodkin/process"
	"bodkin/templates"
)

// runIn runs the program in a fresh folder with nothing of the tester's own
// around it.
func runIn(t testing.TB, in string, args ...string) (code int, out, errs string) {
	t.Helper()
	var o, e bytes.Buffer
	code = run(t.Context(), args, streams{in: strings.NewReader(in), out: &o, err: &e})
	return code, o.String(), e.String()
}

// apart puts the test in an empty folder with an empty configuration.
func apart(t testing.TB) string {
	t.Helper()
	dir := t.TempDir()
	for _, name := range []string{"HOME", "XDG_CONFIG_HOME"} {
		t.Setenv(name, filepath.Join(dir, "home"))
	}
	for _, v := range os.Environ() {
		if name, _, _ := strings.Cut(v, "="); strings.HasPrefix(name, "BODKIN_") {
			t.Setenv(name, "")
		}
	}
	t.Chdir(dir)
	return dir
}

func put(t testing.TB, name, data string) {
	t.Helper()
	if err := os.WriteFile(name, []byte(data), 0o644); err != nil {
		t.Fatal(err)
	}
}

// A new job of every garment is taken as it is, in both units.
func TestCommandsStartIsAccepted(t *testing.T) {
	apart(t)
	for _, name := range templates.Names() {
		for _, units := range []string{"cm", "in"} {
			code, job, errs := runIn(t, "", "start", name, "--units", units)
			if code != exitDone {
				t.Fatalf("start %s: %d %s", name, code, errs)
			}
			put(t, "job.yaml", job)
			if code, out, errs := runIn(t, "", "check", "job.yaml"); code != exitDone || !strings.Contains(out, "steps") {
				t.Errorf("check of a new %s in %s: %d %s%s", name, units, code, out, errs)
			}
		}
	}
}

// The same job twice gives the same bytes in every form, and the PDF is one that
// other programs read.
func TestCommandsSameBytesAndReadablePDF(t *testing.T) {
	apart(t)
	for _, ending := range endings() {
		var files [2][]byte
		for i, name := range []string{"a" + ending, "b/a" + ending} {
			if err := os.MkdirAll("b", 0o755); err != nil {
				t.Fatal(err)
			}
			if code, _, errs := runIn(t, "", "plan", "-o", name); code != exitDone {
				t.Fatalf("plan -o %s: %d %s", name, code, errs)
			}
			data, err := os.ReadFile(name)
			if err != nil {
				t.Fatal(err)
			}
			files[i] = data
		}
		if !bytes.Equal(files[0], files[1]) || len(files[0]) < 1000 {
			t.Errorf("%s: two runs differ, or are empty (%d and %d bytes)", ending, len(files[0]), len(files[1]))
		}
	}
	for _, program := range []string{"pdftotext", "qpdf"} {
		if _, err := exec.LookPath(program); err != nil {
			if os.Getenv("CI") == "true" {
				t.Fatalf("%s is required under CI", program)
			}
			t.Skipf("%s is not installed: the PDF was not read by it", program)
		}
	}
	text, err := exec.Command("pdftotext", "a.pdf", "-").Output()
	if err != nil {
		t.Fatal(err)
	}
	for _, w := range []string{"Boathouse concert", "Step 1", "French seam", "reed green", "dusk blue", "Why this order"} {
		if !bytes.Contains(text, []byte(w)) {
			t.Errorf("the PDF's text does not hold %q", w)
		}
	}
	if out, err := exec.Command("qpdf", "--check", "a.pdf").CombinedOutput(); err != nil {
		t.Errorf("qpdf: %v\n%s", err, out)
	}
}

// The plan as JSON has every key that is promised, lengths as numbers.
func TestCommandsPlanJSON(t *testing.T) {
	apart(t)
	if code, _, errs := runIn(t, "", "plan", "-o", "p.json"); code != exitDone {
		t.Fatal(errs)
	}
	data, err := os.ReadFile("p.json")
	if err != nil {
		t.Fatal(err)
	}
	var p map[string]any
	if err := json.Unmarshal(data, &p); err != nil {
		t.Fatal(err)
	}
	for key, inner := range map[string][]string{
		"pieces":      {"name", "cloth", "cut", "count", "width_mm", "height_mm", "edges"},
		"strips":      {"name", "cloth", "finished_mm", "cut_width_mm", "cut_length_mm", "lengths", "joins"},
		"seams":       {"name", "kind", "construction", "iso4916_class", "stitches", "length_mm", "allowance_mm", "finished_mm", "insisted", "because", "rejected"},
		"interfacing": nil,
		"operations":  {"id", "does", "part", "seam", "station", "setting", "minutes", "after", "text"},
		"steps":       {"number", "title", "station", "operations", "minutes"},
		"changes":     {"before_step", "station", "what", "from", "to", "minutes"},
		"thread":      {"colour", "needle_m", "looper_m", "metres", "bobbins"},
		"checks":      {"after_step", "what", "expect_mm", "tolerance_mm"},
		"cautions":    {"text", "why"},
	} {
		list, ok := p[key].([]any)
		if !ok {
			t.Errorf("%s is no list", key)
			continue
		}
		for _, k := range inner {
			if _, ok := list[0].(map[string]any)[k]; !ok {
				t.Errorf("%s[0] has no %s", key, k)
			}
		}
	}
	for key, inner := range map[string][]string{
		"order":  {"change_minutes", "bound_minutes", "proved", "seam_by_seam_minutes"},
		"totals": {"operations", "steps", "sew_minutes", "change_minutes", "thread_changes", "needle_changes", "station_moves"},
	} {
		for _, k := range inner {
			if _, ok := p[key].(map[string]any)[k]; !ok {
				t.Errorf("%s has no %s", key, k)
			}
		}
	}
	if p["schema"] != process.Schema || p["garment"] != "shell-top" || p["units"] != "cm" {
		t.Errorf("schema %v, garment %v, units %v", p["schema"], p["garment"], p["units"])
	}
}

// Every kind lists, as words and as JSON with name, title and source; every
// entry shows.
func TestCommandsListAndShow(t *testing.T) {
	apart(t)
	for _, kind := range []string{"garments", "cloth", "stitches", "seams", "machines", "needles", "thread", "interfacing"} {
		code, out, errs := runIn(t, "", "list", kind, "--json")
		if code != exitDone {
			t.Fatalf("list %s: %s", kind, errs)
		}
		var entries []struct{ Name, Title, Source string }
		if err := json.Unmarshal([]byte(out), &entries); err != nil {
			t.Fatalf("list %s: %v", kind, err)
		}
		if len(entries) == 0 {
			t.Errorf("no %s", kind)
		}
		for _, e := range entries {
			if e.Name == "" || e.Title == "" || e.Source == "" {
				t.Errorf("%s: %+v", kind, e)
			}
		}
		e := entries[0]
		if code, out, errs := runIn(t, "", "show", kind, e.Name); code != exitDone || !strings.Contains(out, "source:") {
			t.Errorf("show %s %s: %d %s%s", kind, e.Name, code, out, errs)
		}
	}
}

func TestCommandsWhy(t *testing.T) {
	apart(t)
	put(t, "job.yaml", string(demoJob))
	for _, tt := range []struct {
		args  []string
		words []string
	}{
		{[]string{"side"}, []string{"French seam", "enclosed", "ruled out"}},
		{[]string{"neck", "shoulder"}, []string{"runs over the end of the shoulder seam"}},
		{[]string{"hem", "side"}, []string{"side seam"}},
		{[]string{"side", "bust-dart"}, []string{"takes in the mouth"}},
	} {
		code, out, errs := runIn(t, "", append([]string{"why", "job.yaml"}, tt.args...)...)
		if code != exitDone {
			t.Errorf("why %v: %d %s", tt.args, code, errs)
		}
		for _, w := range tt.words {
			if !strings.Contains(strings.Join(strings.Fields(out), " "), w) {
				t.Errorf("why %v: %q does not say %q", tt.args, out, w)
			}
		}
	}
}

// Bad input: one clear error, the right exit code, nothing written, nothing lost.
func TestCommandsBadInput(t *testing.T) {
	const good = "make: pull-on-skirt\nsize: {waist: 76 cm, hip: 98 cm}\ncloth: {main: {is: cotton-lawn, colour: white, width: 114 cm}}\n"
	tests := []struct {
		name, job, output string
		code              int
		words             []string
	}{
		{"garment", strings.Replace(good, "pull-on-skirt", "pull-on-skrit", 1), "x.pdf", exitInput, []string{"job.yaml:1:7", `"pull-on-skirt"`}},
		{"cloth", strings.Replace(good, "cotton-lawn", "coton-lawn", 1), "x.pdf", exitInput, []string{"job.yaml:3:20", `"cotton-lawn"`}},
		{"key", strings.Replace(good, "size", "sise", 1), "x.pdf", exitInput, []string{"job.yaml:2:1", `"size"`}},
		{"unit", strings.Replace(good, "76 cm", "76 cn", 1), "x.pdf", exitInput, []string{"job.yaml:2:", "cm"}},
		{"no unit", strings.Replace(good, "76 cm", "76", 1), "x.pdf", exitInput, []string{"job.yaml:2:", "unit"}},
		{"negative", strings.Replace(good, "76 cm", "-76 cm", 1), "x.pdf", exitInput, []string{"job.yaml:2:"}},
		{"absurd", strings.Replace(good, "98 cm", "98 m", 1), "x.pdf", exitInput, []string{"job.yaml:2:"}},
		{"a seam the cloth rules out", strings.Replace(good, "cotton-lawn", "velvet", 1) + "seams: {side: french}\n", "x.pdf", exitInput, []string{"job.yaml:4:", "pile", "anyway"}},
		{"a seam the machines rule out", good + "seams: {side: plain-open-overlocked}\n", "x.pdf", exitInput, []string{"job.yaml:4:", "504"}},
		{"a tag", strings.Replace(good, "white", "!x white", 1), "x.pdf", exitInput, []string{"job.yaml:3:"}},
		{"a circular garment", "make: ./circular.yaml\ncloth: {main: {is: cotton-lawn}}\n", "x.pdf", exitInput, []string{"waits for", "closes"}},
		{"a failing formula", "make: ./failing.yaml\ncloth: {main: {is: cotton-lawn}}\n", "x.pdf", exitInput, []string{"failing.yaml:", "zero"}},
		{"ending", good, "x.docx", exitInput, []string{".pdf"}},
		{"no folder", good, "none/x.pdf", exitCouldNot, []string{"none"}},
		{"a folder as output", good, "dir.pdf", exitCouldNot, []string{"dir.pdf"}},
		{"too large", strings.Repeat("# padding\n", 120_000), "x.pdf", exitInput, []string{"1 MiB"}},
		{"not text", "make: \xff\xfe\n", "x.pdf", exitInput, []string{"job.yaml:1:"}},
	}
	circular, err := os.ReadFile("testdata/circular.yaml")
	if err != nil {
		t.Fatal(err)
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			apart(t)
			put(t, "circular.yaml", string(circular))
			put(t, "failing.yaml", strings.Replace(string(circular), "b: [half, 0]", "b: [half / (half - half), 0]", 1))
			put(t, "job.yaml", tt.job)
			put(t, "x.pdf", "an earlier sheet")
			if err := os.Mkdir("dir.pdf", 0o755); err != nil {
				t.Fatal(err)
			}
			before := inFolder(t)
			code, out, errs := runIn(t, "", "plan", "job.yaml", "-o", tt.output)
			if code != tt.code {
				t.Errorf("exit %d, want %d: %s", code, tt.code, errs)
			}
			for _, w := range tt.words {
				if !strings.Contains(errs, w) {
					t.Errorf("%q does not say %q", errs, w)
				}
			}
			if out != "" {
				t.Errorf("wrote %q to standard output", out)
			}
			if after := inFolder(t); after != before {
				t.Errorf("the folder holds %s, before %s", after, before)
			}
			if data, _ := os.ReadFile("x.pdf"); string(data) != "an earlier sheet" {
				t.Error("the earlier sheet is lost")
			}
		})
	}
}

func inFolder(t *testing.T) string {
	t.Helper()
	entries, err := os.ReadDir(".")
	if err != nil {
		t.Fatal(err)
	}
	var names []string
	for _, e := range entries {
		names = append(names, e.Name())
	}
	return strings.Join(names, " ")
}

// The workroom is found beside the maker, named by a variable, or by a flag, and
// the flag wins; it is read strictly.
func TestCommandsWorkroomSettings(t *testing.T) {
	apart(t)
	for name, file := range map[string]string{"Found": "workroom.yaml", "By variable": "v.yaml", "By flag": "f.yaml"} {
		put(t, file, "name: "+name+"\nmachines: [{is: straight-stitcher}]\niron: steam\n")
	}
	room := func(args ...string) string {
		code, out, errs := runIn(t, "", append([]string{"check"}, args...)...)
		if code != exitDone {
			t.Fatal(errs)
		}
		return out
	}
	if out := room(); !strings.Contains(out, "Found") {
		t.Errorf("found: %s", out)
	}
	t.Setenv("BODKIN_WORKROOM", "v.yaml")
	if out := room(); !strings.Contains(out, "By variable") {
		t.Errorf("by variable: %s", out)
	}
	if out := room("--workroom", "f.yaml"); !strings.Contains(out, "By flag") {
		t.Errorf("by flag: %s", out)
	}
	put(t, "v.yaml", "name: x\nmachnes: []\n")
	if code, _, errs := runIn(t, "", "check"); code != exitInput || !strings.Contains(errs, "v.yaml:2:1") || !strings.Contains(errs, `"machines"`) {
		t.Errorf("exit %d: %s", code, errs)
	}
}

// A search that is not given time still gives a whole, valid sheet.
func TestCommandsNoTimeForTheSearch(t *testing.T) {
	apart(t)
	if code, _, errs := runIn(t, "", "plan", "--within", "0s", "-o", "p.json"); code != exitDone {
		t.Fatal(errs)
	}
	ctx, cancel := context.WithCancel(t.Context())
	cancel()
	var o, e bytes.Buffer
	if code := run(ctx, []string{"plan"}, streams{in: strings.NewReader(""), out: &o, err: &e}); code != exitDone || !strings.Contains(o.String(), "Step 1") {
		t.Errorf("cancelled: exit %d, %s", code, e.String())
	}
}

// The whole command to a PDF, for each garment.
func BenchmarkCommandToPDF(b *testing.B) {
	for _, name := range templates.Names() {
		b.Run(name, func(b *testing.B) {
			apart(b)
			_, job, _ := runIn(b, "", "start", name)
			put(b, "job.yaml", job)
			b.ReportAllocs()
			for b.Loop() {
				if code, _, errs := runIn(b, "", "plan", "job.yaml", "-o", "sheet.pdf"); code != exitDone {
					b.Fatal(errs)
				}
			}
		})
	}
}

package main

import (
	"context"
	"encoding/json"
	"io"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"bodkin/process"
	"bodkin/templates"
)

// What start writes is accepted unchanged by check, for every garment of the
// shelf, in both units; and in inches no length is left in centimetres.
func TestStartIsAccepted(t *testing.T) {
	for _, name := range templates.Names() {
		for _, units := range []string{"cm", "in"} {
			t.Run(name+" in "+units, func(t *testing.T) {
				alone(t)
				job := must(t, "start", name, "--units", units)
				write(t, map[string]string{"job.yaml": job})
				said := must(t, "check", "job.yaml")
				if !strings.Contains(said, "operations in") {
					t.Errorf("check says\n%s", said)
				}
				if units == "in" && strings.Contains(job, " cm\n") {
					t.Errorf("a length in cm in\n%s", job)
				}
			})
		}
	}
}

// The same job twice gives the same bytes, for every garment in every form.
func TestSameBytes(t *testing.T) {
	for k, name := range templates.Names() {
		forms := endings()[k%len(endings()):][:1] // each garment in one form in turn
		if k < 2 {
			forms = endings()
		}
		t.Run(name, func(t *testing.T) {
			alone(t)
			write(t, map[string]string{"job.yaml": must(t, "start", name)})
			for _, folder := range []string{"a", "b"} {
				if err := os.Mkdir(folder, 0o777); err != nil {
					t.Fatal(err)
				}
				for _, ending := range forms {
					must(t, "plan", "job.yaml", "-o", folder+"/sheet"+ending)
				}
			}
			first, second := contents(t, "a"), contents(t, "b")
			if len(first) < len(forms) {
				t.Errorf("only %d files", len(first))
			}
			if d := cmp.Diff(first, second); d != "" {
				t.Errorf("two runs differ:\n%.2000s", d)
			}
		})
	}
}

// contents are the files under a folder by their names in it.
func contents(t *testing.T, folder string) map[string]string {
	t.Helper()
	all := map[string]string{}
	err := fs.WalkDir(os.DirFS(folder), ".", func(name string, e fs.DirEntry, err error) error {
		if err == nil && !e.IsDir() {
			all[name] = read(t, filepath.Join(folder, name))
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return all
}

// The Markdown refers to every figure beside it and to no other.
func TestFiguresBesideTheSheet(t *testing.T) {
	alone(t)
	must(t, "plan", "-o", "row 2 #1.md")
	sheet := read(t, "row 2 #1.md")
	figures := contents(t, "row 2 -1-figures")
	for name, svg := range figures {
		if !strings.Contains(sheet, "](<row 2 -1-figures/"+name+">)") {
			t.Errorf("the sheet does not refer to %s", name)
		}
		if !strings.HasPrefix(svg, "<svg") {
			t.Errorf("%s begins %.20q", name, svg)
		}
	}
	if n := strings.Count(sheet, "!["); n != len(figures) || n < 5 {
		t.Errorf("%d references to %d figures", n, len(figures))
	}
}

// The PDF is one that other programs read.
func TestOthersReadThePDF(t *testing.T) {
	pdftotext, qpdf := need(t, "pdftotext"), need(t, "qpdf")
	for _, paper := range papers() {
		t.Run(paper, func(t *testing.T) {
			alone(t)
			must(t, "plan", "-o", "sheet.pdf", "--paper", paper)
			text, err := exec.CommandContext(t.Context(), pdftotext, "sheet.pdf", "-").Output()
			if err != nil {
				t.Fatal(err)
			}
			for _, w := range []string{"Boathouse concert, second row", "Step 1", "French seam", "reed green", "dusk blue"} {
				if !strings.Contains(string(text), w) {
					t.Errorf("its text does not hold %q", w)
				}
			}
			if out, err := exec.CommandContext(t.Context(), qpdf, "--check", "sheet.pdf").CombinedOutput(); err != nil {
				t.Errorf("qpdf: %v\n%s", err, out)
			}
		})
	}
}

// The file's properties, as Poppler reads them, name the work, the room and the
// language; a room that nobody described is nobody's.
func TestPropertiesOfThePDF(t *testing.T) {
	pdfinfo := need(t, "pdfinfo")
	alone(t)
	write(t, map[string]string{"job.yaml": must(t, "start", "shell-top"), "room.yaml": "name: Phòng may Ọ̀ṣun\n"})
	for _, c := range []struct {
		args      []string
		want, not string
	}{
		{[]string{"plan"}, "Author:          Loft above the boathouse\n", "\x00"},
		{[]string{"plan", "job.yaml", "--workroom", "room.yaml"}, "Author:          Phòng may Ọ̀ṣun\n", "\x00"},
		{[]string{"plan", "job.yaml"}, "Title: ", "Author: "},
	} {
		must(t, append(c.args, "--within", "0s", "-o", "sheet.pdf")...)
		info, err := exec.CommandContext(t.Context(), pdfinfo, "sheet.pdf").Output()
		if err != nil {
			t.Fatal(err)
		}
		if s := string(info); !strings.Contains(s, "Title: ") || !strings.Contains(s, c.want) || strings.Contains(s, c.not) {
			t.Errorf("%s: want %q and no %q in\n%s", strings.Join(c.args, " "), c.want, c.not, s)
		}
		file, err := os.ReadFile("sheet.pdf")
		if err != nil {
			t.Fatal(err)
		}
		if !strings.Contains(string(file), "/Lang (en)") { // ISO 32000-1, 14.9.2
			t.Errorf("%s: no language", strings.Join(c.args, " "))
		}
	}
}

// need is the path of a program that only some checks call.
func need(t *testing.T, program string) string {
	t.Helper()
	path, err := exec.LookPath(program)
	if err != nil && os.Getenv("CI") == "true" {
		t.Fatalf("%s is needed under CI", program)
	}
	if err != nil {
		t.Skipf("%s is not installed, so the PDF was not read by it", program)
	}
	return path
}

// The plan as JSON has every key that the design promises, lists never null.
func TestJSONKeys(t *testing.T) {
	alone(t)
	must(t, "plan", "-o", "plan.json")
	text := read(t, "plan.json")
	if strings.Contains(text, ": null") || strings.Contains(text, `\u003c`) {
		t.Error("it has a null or a sign that is escaped without need")
	}
	var p map[string]json.RawMessage
	if err := json.Unmarshal([]byte(text), &p); err != nil {
		t.Fatal(err)
	}
	lists := map[string]string{
		"pieces":      "name cloth cut count width_mm height_mm edges",
		"strips":      "name cloth finished_mm cut_width_mm cut_length_mm lengths joins",
		"seams":       "name kind construction iso4916_class stitches length_mm allowance_mm finished_mm insisted because rejected",
		"interfacing": "",
		"operations":  "id does part seam station setting minutes after text",
		"steps":       "number title station operations minutes",
		"changes":     "before_step station what from to minutes",
		"thread":      "colour needle_m looper_m metres bobbins",
		"checks":      "after_step what expect_mm tolerance_mm",
		"cautions":    "text why",
	}
	for key, inner := range lists {
		var list []map[string]any
		if err := json.Unmarshal(p[key], &list); err != nil {
			t.Errorf("%s: %v", key, err)
			continue
		}
		if inner == "" {
			continue
		}
		if len(list) == 0 {
			t.Errorf("%s is empty", key)
			continue
		}
		wantKeys(t, key, list[0], inner)
	}
	for key, inner := range map[string]string{
		"order":  "change_minutes bound_minutes proved seam_by_seam_minutes",
		"totals": "operations steps sew_minutes change_minutes thread_changes needle_changes station_moves",
	} {
		var one map[string]any
		if err := json.Unmarshal(p[key], &one); err != nil {
			t.Errorf("%s: %v", key, err)
			continue
		}
		wantKeys(t, key, one, inner)
	}
	for _, key := range strings.Fields("schema garment title units") {
		if len(p[key]) < 3 {
			t.Errorf("%s is %s", key, p[key])
		}
	}
}

func wantKeys(t *testing.T, where string, object map[string]any, keys string) {
	t.Helper()
	for _, k := range strings.Fields(keys) {
		if _, ok := object[k]; !ok {
			t.Errorf("%s has no %s", where, k)
		}
	}
}

// Without time for the search, and when interrupted, the order is still one that
// can be worked, with a bound that it does not undercut.
func TestNoTimeForTheSearch(t *testing.T) {
	interrupted, stop := context.WithCancel(t.Context())
	stop()
	one := []string{"open-jacket"}
	for _, tt := range []struct {
		name     string
		ctx      context.Context
		args     []string
		garments []string
	}{
		{"no time", t.Context(), []string{"--within", "0s"}, templates.Names()},
		{"interrupted", interrupted, nil, templates.Names()},
		{"hardly any time", t.Context(), []string{"--within", "1ns"}, one},
		{"interrupted without time", interrupted, []string{"--within", "0s"}, one},
	} {
		for _, name := range tt.garments {
			t.Run(tt.name+" "+name, func(t *testing.T) {
				alone(t)
				write(t, map[string]string{"job.yaml": must(t, "start", name)})
				r := call(tt.ctx, "", append([]string{"plan", "job.yaml", "-o", "plan.json"}, tt.args...)...)
				if r.code != exitDone {
					t.Fatalf("exit code %d: %s", r.code, r.err)
				}
				var p process.Plan
				if err := json.Unmarshal([]byte(read(t, "plan.json")), &p); err != nil {
					t.Fatal(err)
				}
				canBeWorked(t, p)
				if tt.ctx.Err() != nil && !p.Order.Proved && r.complaint() != "bodkin: interrupted; the best order found so far is used\n" {
					t.Errorf("standard error has %q", r.err)
				}
				if tt.ctx.Err() == nil && r.complaint() != "" {
					t.Errorf("standard error has %q", r.err)
				}
			})
		}
	}
}

// canBeWorked checks that every operation comes once, in a step of its own kind,
// after all that it waits for.
func canBeWorked(t *testing.T, p process.Plan) {
	t.Helper()
	done := map[string]bool{}
	for _, o := range p.Operations {
		for _, a := range o.After {
			if !done[a.ID] {
				t.Errorf("%s comes before %s", o.ID, a.ID)
			}
		}
		if done[o.ID] {
			t.Errorf("%s comes twice", o.ID)
		}
		done[o.ID] = true
	}
	var steps []string
	for _, s := range p.Steps {
		steps = append(steps, s.Operations...)
	}
	var all []string
	for _, o := range p.Operations {
		all = append(all, o.ID)
	}
	if !slices.Equal(steps, all) || len(all) == 0 {
		t.Errorf("the steps hold %v\nthe operations are %v", steps, all)
	}
	const second = 1.0 / 60 // costs are whole seconds
	if p.Order.BoundMinutes > p.Order.ChangeMinutes+second/2 || p.Order.BoundMinutes < 0 {
		t.Errorf("bound %g, but %g minutes of change", p.Order.BoundMinutes, p.Order.ChangeMinutes)
	}
}

// A terminal at which nobody types does not hold an interrupt up.
func TestInterruptedInput(t *testing.T) {
	alone(t)
	ctx, stop := context.WithCancel(t.Context())
	end := make(chan struct{})
	defer close(end)
	stop()
	var errs strings.Builder
	code := run(ctx, []string{"plan", "-"}, streams{in: never{end}, out: io.Discard, err: &errs})
	if code != exitCouldNot || errs.String() != "bodkin: interrupted while reading standard input\n" {
		t.Errorf("exit code %d: %s", code, errs.String())
	}
}

// The whole command, from a job file to a PDF on the disk, in this process.
func BenchmarkPlanPDF(b *testing.B) {
	for _, name := range templates.Names() {
		b.Run(name, func(b *testing.B) {
			alone(b)
			write(b, map[string]string{"job.yaml": must(b, "start", name)})
			b.ReportAllocs()
			for b.Loop() {
				if r := call(b.Context(), "", "plan", "job.yaml", "-o", "sheet.pdf"); r.code != exitDone {
					b.Fatal(r.err)
				}
			}
		})
	}
}

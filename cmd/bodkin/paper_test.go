package main

import (
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"testing"
	"time"

	"bodkin/process"
	"bodkin/sheets"
	"bodkin/sheets/html"
	"bodkin/sheets/pdf"
	"bodkin/sheets/sheettest"
)

// ofSteps is the plan of a top with its steps told over and over, until there are
// so many.
func ofSteps(b *testing.B, steps int) *process.Plan {
	b.Helper()
	p := sheettest.Kept(b, "../../sheets/testdata/shell-top.json")
	first, operations, changes := len(p.Steps), slices.Clone(p.Operations), slices.Clone(p.Changes)
	for round := 1; len(p.Steps) < steps; round++ {
		again := fmt.Sprintf("-%d", round)
		for _, o := range operations {
			o.ID += again
			p.Operations = append(p.Operations, o)
		}
		for _, c := range changes {
			c.BeforeStep += round * first
			p.Changes = append(p.Changes, c)
		}
		for _, s := range p.Steps[:first] {
			s.Number += round * first
			s.Operations = slices.Clone(s.Operations)
			for k := range s.Operations {
				s.Operations[k] += again
			}
			p.Steps = append(p.Steps, s)
		}
	}
	p.Steps = p.Steps[:steps]
	p.Totals.Steps = steps
	return p
}

// BenchmarkPaper is the way from a plan to paper and to the browser, for 40 steps
// and up to 2,000; what a step costs should stay what it is.
func BenchmarkPaper(b *testing.B) {
	for _, steps := range []int{40, 500, 1000, 2000} {
		p := ofSteps(b, steps)
		b.Run(fmt.Sprintf("pdf/%d", steps), func(b *testing.B) { measured(b, steps, func() error { return toPDF(io.Discard, p) }) })
		b.Run(fmt.Sprintf("html/%d", steps), func(b *testing.B) { measured(b, steps, func() error { return toHTML(io.Discard, p) }) })
	}
}

func measured(b *testing.B, steps int, write func() error) {
	b.ReportAllocs()
	for b.Loop() {
		if err := write(); err != nil {
			b.Fatal(err)
		}
	}
	b.ReportMetric(float64(b.Elapsed().Microseconds())/float64(b.N)/float64(steps), "µs/step")
}

func toPDF(w io.Writer, p *process.Plan) error {
	o := sheets.Options{FiguresAt: "figures/"}
	s := sheets.Compose(p, o)
	return pdf.Write(w, s.Markdown, pdf.Options{TypeSize: o.TypeSize(), StepHead: o.StepHead(), Title: s.Title, Lang: "en", Figures: s.ByAddress()})
}

func toHTML(w io.Writer, p *process.Plan) error {
	s := sheets.Compose(p, sheets.Options{FiguresAt: "figures/"})
	return html.Write(w, s.Markdown, html.Options{Title: s.Title, Lang: "en", Figures: s.ByAddress()})
}

// BenchmarkAgainstAConverter turns the same Markdown of 40 steps, its figures
// beside it, into a PDF with pandoc and WeasyPrint, as Debian has them, and
// reports how many times as long that takes as we do in the same run.
func BenchmarkAgainstAConverter(b *testing.B) {
	pandoc, err := exec.LookPath("pandoc")
	if err == nil {
		_, err = exec.LookPath("weasyprint")
	}
	if err != nil {
		b.Skipf("pandoc and weasyprint are needed for this one of the benchmarks: %v", err)
	}
	p := ofSteps(b, 40)
	dir := b.TempDir()
	s := sheets.Compose(p, sheets.Options{FiguresAt: "figures/"})
	if err := os.Mkdir(filepath.Join(dir, "figures"), 0o700); err != nil {
		b.Fatal(err)
	}
	for _, d := range s.Figures {
		if err := os.WriteFile(filepath.Join(dir, d.Address), d.Figure.SVG(), 0o600); err != nil {
			b.Fatal(err)
		}
	}
	if err := os.WriteFile(filepath.Join(dir, "sheet.md"), s.Markdown, 0o600); err != nil {
		b.Fatal(err)
	}
	var ours, theirs time.Duration
	for b.Loop() {
		begin := time.Now()
		if err := toPDF(io.Discard, p); err != nil {
			b.Fatal(err)
		}
		ours += time.Since(begin)
		begin = time.Now()
		run := exec.CommandContext(b.Context(), pandoc, "--from=gfm", "--standalone", "--metadata=title:Sheet", "--pdf-engine=weasyprint", "--output=sheet.pdf", "sheet.md")
		run.Dir = dir
		if said, err := run.CombinedOutput(); err != nil {
			b.Fatalf("pandoc: %v\n%s", err, said)
		}
		theirs += time.Since(begin)
	}
	b.ReportMetric(float64(ours.Milliseconds())/float64(b.N), "ours-ms")
	b.ReportMetric(float64(theirs.Milliseconds())/float64(b.N), "theirs-ms")
	b.ReportMetric(theirs.Seconds()/ours.Seconds(), "times-as-long")
}

package main

import (
	"bytes"
	"cmp"
	"path/filepath"
	"strings"

	"bodkin/sheets"
	"bodkin/sheets/html"
	"bodkin/sheets/pdf"
)

// A document is sheets that are not of a plan: what writes them, and the value that
// stands behind them.
type document struct {
	compose func(figuresAt string) sheets.Sheet
	value   any
	head    string // running head of the PDF

	stepHead float64 // of its numbers, as [pdf.Options] has it
}

// files puts it into the form of the output's ending.
func (p document) files(set settings, output string) ([]file, error) {
	var out bytes.Buffer
	if toStandardOutput(output) {
		return []file{{output, p.compose("").Markdown}}, nil
	}
	switch strings.ToLower(filepath.Ext(output)) {
	case ".json":
		err := writeJSON(&out, p.value)
		return []file{{output, out.Bytes()}}, err
	case ".pdf":
		sheet := p.compose("figures/")
		o := pdf.Options{Paper: pdf.A4, TypeSize: cmp.Or(set.typeSize, sheets.Options{}.TypeSize()), Title: sheet.Title, RunningHead: p.head, Lang: "en", Figures: sheet.ByAddress(), Apart: true, StepHead: p.stepHead}
		switch set.paper {
		case "a5":
			o.Paper = pdf.A5
			if set.typeSize == 0 {
				o.TypeSize *= onA5
			}
		case "letter":
			o.Paper = pdf.Letter
		}
		err := pdf.Write(&out, sheet.Markdown, o)
		return []file{{output, out.Bytes()}}, err
	case ".html":
		sheet := p.compose("figures/")
		err := html.Write(&out, sheet.Markdown, html.Options{Title: sheet.Title, Lang: "en", Figures: sheet.ByAddress()})
		return []file{{output, out.Bytes()}}, err
	}
	return markdownFiles(output, p.compose), nil
}

// write puts it to standard output or into files.
func (p document) write(s streams, set settings, output string) error {
	files, err := p.files(set, output)
	if err != nil {
		return err
	}
	if toStandardOutput(output) {
		_, _ = s.out.Write(files[0].data) // run tells of a failure
		return nil
	}
	return writeFiles(files)
}

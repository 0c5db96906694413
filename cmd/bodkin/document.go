package main

import (
	"bytes"
	"cmp"
	"path/filepath"
	"strings"

	"bodkin/process"
	"bodkin/sheets"
	"bodkin/sheets/html"
	"bodkin/sheets/pdf"
)

// A document is what is written of one thing in any of its forms: what writes the
// sheet, and the value that stands behind it.
type document struct {
	compose func(figuresAt string) sheets.Sheet
	value   any
	tables  map[string]func() []byte // for spreadsheets, by the word that stands before .csv
	head    string                   // running head of the PDF
	room    string                   // workroom that it is by
	apart   bool                     // each part of the PDF begins on a page of its own

	typeSize float64 // points, where none is asked for
	stepHead float64 // of its numbers, as [pdf.Options] has it
	large    bool    // steps have large numbers in HTML
}

// stepSheet is a document of steps for the reader whom the settings name.
func (s settings) stepSheet(compose func(sheets.Options) sheets.Sheet) document {
	as := s.sheet("")
	return document{compose: func(at string) sheets.Sheet { return compose(s.sheet(at)) },
		typeSize: as.TypeSize(), stepHead: as.StepHead(), large: as.For == sheets.Class}
}

// files puts it into the form of the output's ending, the sheet itself first.
func (d document) files(set settings, output string) ([]file, error) {
	if toStandardOutput(output) {
		return d.markdown(set, output), nil
	}
	var out bytes.Buffer
	var err error
	switch strings.ToLower(filepath.Ext(output)) {
	case ".json":
		err = writeJSON(&out, d.value)
	case ".csv":
		out.Write(d.tables[tableWord(output)]())
	case ".pdf":
		sheet := d.compose("figures/")
		err = pdf.Write(&out, sheet.Markdown, d.onPaper(set, sheet))
	case ".html":
		sheet := d.compose("figures/")
		err = html.Write(&out, sheet.Markdown, html.Options{Title: sheet.Title, Author: author(d.room), Lang: "en", LargeSteps: d.large, Figures: sheet.ByAddress()})
	default:
		return d.markdown(set, output), nil
	}
	return []file{{output, out.Bytes()}}, err
}

// onA5 is how large type is on A5 beside that on A4, where none is asked for: the
// paper is 0.71 times as wide and is held nearer.
const onA5 = 0.8

func (d document) onPaper(set settings, sheet sheets.Sheet) pdf.Options {
	o := pdf.Options{
		Paper: pdf.A4, TypeSize: cmp.Or(set.typeSize, d.typeSize, sheets.Options{}.TypeSize()), Title: sheet.Title, RunningHead: d.head, Author: author(d.room), Lang: "en",
		StepHead: d.stepHead, Figures: sheet.ByAddress(), Apart: d.apart,
	}
	switch set.paper {
	case "a5":
		o.Paper = pdf.A5
		if set.typeSize == 0 {
			o.TypeSize *= onA5
		}
	case "letter":
		o.Paper = pdf.Letter
	}
	return o
}

// author is who a sheet is by, in the file's properties: the workroom, where one
// was described.
func author(room string) string {
	if room == process.DefaultWorkroom().Name {
		return ""
	}
	return room
}

// markdown is the sheet with its figures where the settings want them: inside, as
// addresses that hold their own data (RFC 2397), in a folder beside it, or nowhere,
// as on standard output, which has no place for them.
func (d document) markdown(set settings, output string) []file {
	switch {
	case set.figures == "inline":
		sheet := d.compose("figures/")
		return []file{{output, sheet.Inline()}}
	case set.figures == "none" || toStandardOutput(output):
		return []file{{output, d.compose("").Markdown}}
	}
	base := filepath.Base(output)
	folder := strings.Map(inLink, strings.TrimSuffix(base, filepath.Ext(base))) + "-figures"
	sheet := d.compose(folder + "/")
	files := []file{{output, sheet.Markdown}}
	for _, x := range sheet.Figures {
		files = append(files, file{filepath.Join(filepath.Dir(output), filepath.FromSlash(x.Address)), x.Figure.SVG()})
	}
	return files
}

// inLink makes hyphens of signs that have a meaning in a web address.
func inLink(r rune) rune {
	if strings.ContainsRune(`%#?\`, r) {
		return '-'
	}
	return r
}

// write puts it to standard output or into files.
func (d document) write(s streams, set settings, output string) error {
	files, err := d.files(set, output)
	if err != nil {
		return err
	}
	if toStandardOutput(output) {
		_, _ = s.out.Write(files[0].data) // run tells of a failure
		return nil
	}
	return writeFiles(files)
}

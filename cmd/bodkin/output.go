package main

import (
	"bytes"
	"cmp"
	"encoding/json"
	"path/filepath"
	"strings"

	"bodkin/process"
	"bodkin/sheets"
	"bodkin/sheets/html"
	"bodkin/sheets/pdf"
)

// renderer puts a plan into its form as files, the sheet itself first.
type renderer func(plan *process.Plan, set settings, output string) ([]file, error)

func endings() []string { return []string{".md", ".pdf", ".html", ".json"} }

func toStandardOutput(output string) bool { return output == "" || output == "-" }

// csvTable is a part of a plan as comma-separated values.
type csvTable struct {
	name  string // stands before .csv
	write func(*process.Plan) []byte
}

func csvTables() []csvTable {
	return []csvTable{{"operations", sheets.OperationsCSV}, {"cut", sheets.CutListCSV}, {"thread", sheets.ThreadCSV}}
}

// planForm is the form of a plan: what formOf knows, and tables, which are told
// by the word before .csv.
func planForm(output string) (renderer, error) {
	if toStandardOutput(output) || !strings.EqualFold(filepath.Ext(output), ".csv") {
		return formOf(output)
	}
	stem := strings.ToLower(strings.TrimSuffix(filepath.Base(output), filepath.Ext(output)))
	word := stem[strings.LastIndexByte(stem, '.')+1:]
	var names, ends []string
	for _, t := range csvTables() {
		if t.name == word {
			return tableFile(t.write), nil
		}
		names = append(names, t.name)
		ends = append(ends, "."+t.name+".csv")
	}
	return nil, unknown(word, names, "end it in one of "+strings.Join(ends, ", "), "%s does not say which table it is to be", output)
}

// formOf is the form that an output's ending stands for.
func formOf(output string) (renderer, error) {
	if toStandardOutput(output) {
		return markdownAlone, nil
	}
	ending := filepath.Ext(output)
	switch strings.ToLower(ending) {
	case ".md":
		return markdownWithFigures, nil
	case ".pdf":
		return pdfFile, nil
	case ".html":
		return htmlFile, nil
	case ".json":
		return jsonFile, nil
	case "":
		return nil, wrong("end it in one of "+strings.Join(endings(), ", "), "the output %s has no ending to tell its form by", output)
	}
	return nil, unknown(ending, endings(), "end it in one of "+strings.Join(endings(), ", "), "no sheet can be written as %s for %s", ending, output)
}

func jsonFile(plan *process.Plan, _ settings, output string) ([]file, error) {
	var out bytes.Buffer
	err := writeJSON(&out, plan)
	return []file{{output, out.Bytes()}}, err
}

// writeJSON writes a value as JSON for people too: indented, and signs such as
// & as they are.
func writeJSON(out *bytes.Buffer, v any) error {
	enc := json.NewEncoder(out)
	enc.SetIndent("", "  ")
	enc.SetEscapeHTML(false)
	return enc.Encode(v)
}

// markdownAlone is the sheet without its figures, which have no place to be.
func markdownAlone(plan *process.Plan, set settings, output string) ([]file, error) {
	if set.figures == "inline" {
		return markdownInline(plan, set, output)
	}
	return []file{{output, sheets.Compose(plan, set.sheet("")).Markdown}}, nil
}

// markdownInline is the sheet with its figures inside, as addresses that hold
// their own data (RFC 2397).
func markdownInline(plan *process.Plan, set settings, output string) ([]file, error) {
	sheet := sheets.Compose(plan, set.sheet("figures/"))
	return []file{{output, sheet.Inline()}}, nil
}

// sheet are the options of the sheet that the settings ask for.
func (s settings) sheet(figuresAt string) sheets.Options {
	return sheets.Options{FiguresAt: figuresAt, For: sheets.Reader(s.reader), Brief: s.detail == "brief", Steps: s.steps, Wording: s.wording}
}

// markdownWithFigures is the sheet and, in a folder beside it, its figures. Signs
// that have a meaning in a web address become hyphens in the folder's name.
func markdownWithFigures(plan *process.Plan, set settings, output string) ([]file, error) {
	switch set.figures {
	case "none":
		return markdownAlone(plan, set, output)
	case "inline":
		return markdownInline(plan, set, output)
	}
	return markdownFiles(output, func(at string) sheets.Sheet { return sheets.Compose(plan, set.sheet(at)) }), nil
}

// markdownFiles is a sheet and its figures in a folder beside it.
func markdownFiles(output string, compose func(figuresAt string) sheets.Sheet) []file {
	base := filepath.Base(output)
	folder := strings.Map(inLink, strings.TrimSuffix(base, filepath.Ext(base))) + "-figures"
	sheet := compose(folder + "/")
	files := []file{{output, sheet.Markdown}}
	for _, d := range sheet.Figures {
		files = append(files, file{filepath.Join(filepath.Dir(output), filepath.FromSlash(d.Address)), d.Figure.SVG()})
	}
	return files
}

func inLink(r rune) rune {
	if strings.ContainsRune(`%#?\`, r) {
		return '-'
	}
	return r
}

// onA5 is how large type is on A5 beside that on A4, where none is asked for: the
// paper is 0.71 times as wide and is held nearer.
const onA5 = 0.8

func pdfFile(plan *process.Plan, set settings, output string) ([]file, error) {
	as := set.sheet("figures/")
	sheet := sheets.Compose(plan, as)
	o := pdf.Options{
		Paper: pdf.A4, TypeSize: cmp.Or(set.typeSize, as.TypeSize()), Title: sheet.Title, RunningHead: plan.GarmentName, Author: author(plan), Lang: "en",
		StepHead: as.StepHead(), Figures: sheet.ByAddress(),
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
	var out bytes.Buffer
	err := pdf.Write(&out, sheet.Markdown, o)
	return []file{{output, out.Bytes()}}, err
}

// author is who a sheet is by, in the file's properties: the workroom, where one
// was described.
func author(plan *process.Plan) string {
	if plan.Workroom == process.DefaultWorkroom().Name {
		return ""
	}
	return plan.Workroom
}

func htmlFile(plan *process.Plan, set settings, output string) ([]file, error) {
	sheet := sheets.Compose(plan, set.sheet("figures/"))
	var out bytes.Buffer
	err := html.Write(&out, sheet.Markdown, html.Options{Title: sheet.Title, Author: author(plan), Lang: "en", LargeSteps: set.reader == "class", Figures: sheet.ByAddress()})
	return []file{{output, out.Bytes()}}, err
}

// tableFile is a table for other programs.
func tableFile(table func(*process.Plan) []byte) renderer {
	return func(plan *process.Plan, _ settings, output string) ([]file, error) {
		return []file{{output, table(plan)}}, nil
	}
}

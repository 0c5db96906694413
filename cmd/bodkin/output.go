package main

import (
	"bytes"
	"encoding/json"
	"path/filepath"
	"slices"
	"strings"

	"bodkin/sheets"
)

func endings() []string { return []string{".md", ".pdf", ".html", ".json"} }

func toStandardOutput(output string) bool { return output == "" || output == "-" }

// tableWords are the tables of a plan as comma-separated values, by the word that
// stands before .csv.
func tableWords() []string { return []string{"operations", "cut", "thread"} }

// tableWord is the word by which an output says which table it is to be.
func tableWord(output string) string {
	stem := strings.ToLower(strings.TrimSuffix(filepath.Base(output), filepath.Ext(output)))
	return stem[strings.LastIndexByte(stem, '.')+1:]
}

// knowsPlanForm looks whether a plan can be written as the output's ending says: as
// [knowsForm] has it, or as a table.
func knowsPlanForm(output string) error {
	if toStandardOutput(output) || !strings.EqualFold(filepath.Ext(output), ".csv") {
		return knowsForm(output)
	}
	word := tableWord(output)
	if slices.Contains(tableWords(), word) {
		return nil
	}
	var ends []string
	for _, name := range tableWords() {
		ends = append(ends, "."+name+".csv")
	}
	return unknown(word, tableWords(), "end it in one of "+strings.Join(ends, ", "), "%s does not say which table it is to be", output)
}

// knowsForm looks whether there is a form that the output's ending stands for.
func knowsForm(output string) error {
	ending := filepath.Ext(output)
	switch {
	case toStandardOutput(output) || slices.Contains(endings(), strings.ToLower(ending)):
		return nil
	case ending == "":
		return wrong("end it in one of "+strings.Join(endings(), ", "), "the output %s has no ending to tell its form by", output)
	}
	return unknown(ending, endings(), "end it in one of "+strings.Join(endings(), ", "), "no sheet can be written as %s for %s", ending, output)
}

// writeJSON writes a value as JSON for people too: indented, and signs such as
// & as they are.
func writeJSON(out *bytes.Buffer, v any) error {
	enc := json.NewEncoder(out)
	enc.SetIndent("", "  ")
	enc.SetEscapeHTML(false)
	return enc.Encode(v)
}

// printJSON writes a value to standard output as JSON, whole or not at all.
func printJSON(s streams, v any) error {
	var out bytes.Buffer
	if err := writeJSON(&out, v); err != nil {
		return err
	}
	_, _ = s.out.Write(out.Bytes()) // run tells of a failure
	return nil
}

// sheet are the options of the sheet that the settings ask for.
func (s settings) sheet(figuresAt string) sheets.Options {
	return sheets.Options{FiguresAt: figuresAt, For: sheets.Reader(s.reader), Brief: s.detail == "brief", Steps: s.steps, Wording: s.wording}
}

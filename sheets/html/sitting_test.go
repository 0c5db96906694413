package html_test

import (
	"bytes"
	"testing"

	"bodkin/process"
	"bodkin/process/order"
	"bodkin/seams"
	"bodkin/seams/length"
	"bodkin/sheets"
	"bodkin/sheets/html"
	"bodkin/templates"
)

// sittingSheet is the page of two garments in one sitting.
func sittingSheet(t *testing.T) []byte {
	t.Helper()
	shelf, err := seams.Load()
	if err != nil {
		t.Fatal(err)
	}
	var ins []process.Input
	for _, name := range []string{"open-jacket", "pull-on-skirt"} {
		g, err := templates.Load(name)
		if err != nil {
			t.Fatal(err)
		}
		job, err := process.ParseJob("job.yaml", process.StartJob(g, shelf, length.Centimetres))
		if err != nil {
			t.Fatal(err)
		}
		ins = append(ins, process.Input{Job: job, Garment: g, Workroom: process.DefaultWorkroom(), Shelf: shelf})
	}
	s, err := process.Sit(t.Context(), ins, nil, order.Options{Nodes: order.NoSearch})
	if err != nil {
		t.Fatal(err)
	}
	sheet := sheets.ComposeSitting(s, sheets.Options{FiguresAt: "figures/"})
	var out bytes.Buffer
	if err := html.Write(&out, sheet.Markdown, html.Options{Figures: sheet.ByAddress()}); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

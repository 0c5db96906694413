package pdf

import (
	"testing"

	"bodkin/process"
	"bodkin/process/order"
	"bodkin/seams"
	"bodkin/seams/length"
	"bodkin/sheets"
	"bodkin/templates"
)

// The sheet of several garments in one sitting keeps the laws of a plan's, for every
// reader on every paper.
func TestSittingForEveryReaderOnEveryPaper(t *testing.T) {
	shelf, err := seams.Load()
	if err != nil {
		t.Fatal(err)
	}
	room, err := process.ParseWorkroom("room.yaml", []byte("name: One room\nmachines: [{is: straight-stitcher}, {is: overlocker-3, leave: white}]\niron: steam\n"))
	if err != nil {
		t.Fatal(err)
	}
	var ins []process.Input
	for _, name := range []string{"open-jacket", "pull-on-skirt", "open-jacket"} {
		g, err := templates.Load(name)
		if err != nil {
			t.Fatal(err)
		}
		job, err := process.ParseJob("job.yaml", process.StartJob(g, shelf, length.Centimetres))
		if err != nil {
			t.Fatal(err)
		}
		ins = append(ins, process.Input{Job: job, Garment: g, Workroom: room, Shelf: shelf})
	}
	s, err := process.Sit(t.Context(), ins, nil, order.Options{Nodes: order.NoSearch})
	if err != nil {
		t.Fatal(err)
	}
	for _, r := range sheets.Readers() {
		layoutLawsOf(t, func(as sheets.Options) sheets.Sheet { return sheets.ComposeSitting(s, as) }, r, "A4", "A5", "Letter", "wall")
	}
}

package sheets_test

import (
	"fmt"
	"strings"

	"bodkin/process"
	"bodkin/sheets"
)

func ExampleCompose() {
	plan := &process.Plan{
		Title: "Scarf", GarmentName: "square", Units: "cm", Quantity: 1,
		Stations:   []process.Station{{Name: "straight-stitcher", Title: "Straight stitcher", Kind: "machine"}},
		Operations: []process.Operation{{ID: "hem.1", Part: "all four edges", Seam: "hem", Station: "straight-stitcher", Text: "Stitch 2 mm from the fold.", Minutes: 6}},
		Steps: []process.Step{{Number: 1, Title: "Stitch all four edges", Station: "straight-stitcher", Minutes: 6, Operations: []string{"hem.1"},
			Setting: process.Setting{Thread: "ink", Needle: "60/8 sharp", Stitch: "301", StitchMM: 2}}},
	}
	sheet := sheets.Compose(plan, sheets.Options{})
	_, step, _ := strings.Cut(string(sheet.Markdown), "### Step")
	step, _, _ = strings.Cut(step, "##")
	fmt.Print("### Step" + step)
	// Output:
	// ### Step 1 · Straight stitcher · Stitch all four edges
	//
	// **Thread ink · needle 60/8 sharp · stitch 301, 2 mm · about 6 min**
	//
	// - [ ] **All four edges.** Stitch 2 mm from the fold.
}

package seams_test

import (
	"fmt"

	"bodkin/seams"
	"bodkin/seams/length"
)

// 301 with ten stitches to the inch through 0.025 in of cloth: "Consumption
// formula for single needle lockstitch", 2015.
func ExampleStitch_Draws() {
	shelf, err := seams.Load()
	if err != nil {
		fmt.Println(err)
		return
	}
	lockstitch, err := shelf.Stitch("301")
	if err != nil {
		fmt.Println(err)
		return
	}
	thread, err := lockstitch.Draws(10, 0.025, 0)
	fmt.Println(thread, err)
	// Output: 2.5 <nil>
}

func ExampleLoad() {
	_, err := seams.Load(seams.File{Name: "mine.yaml", Data: []byte(`- needle: fine
  title: My finest needle
  when: "cloth.wieght < 30"
  nm: 60
  us: 8
  point: sharp
  stitch_mm: 1.5
  source: my own tests
`)})
	fmt.Println(err)
	// Output:
	// mine.yaml:3:16: unknown name "wieght" after the point
	//       when: "cloth.wieght < 30"
	//                    ^~~~~~
	//   did you mean "weight"?
}

func ExampleShelf_NeedleFor() {
	shelf, err := seams.Load()
	if err != nil {
		fmt.Println(err)
		return
	}
	georgette, err := shelf.Cloth("silk-georgette")
	if err != nil {
		fmt.Println(err)
		return
	}
	needle, err := shelf.NeedleFor(seams.Facts{Cloth: georgette.Facts()})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(needle.Title, length.Format(length.MM(needle.Stitch), length.Centimetres))
	// Output: Sharp 60/8 1.7 mm
}

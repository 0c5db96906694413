package length_test

import (
	"fmt"

	"bodkin/seams/length"
)

func ExampleParse() {
	m, err := length.Parse("1 5/8 in")
	fmt.Println(float64(m), err)
	_, err = length.Parse("1,5 cm")
	fmt.Println(err)
	// Output:
	// 41.275 <nil>
	// "1,5 cm": has a comma in the number; write a decimal with a point: 1.5 cm
}

func ExampleFormat() {
	for _, m := range []length.MM{6, 41.275, 620} {
		fmt.Println(length.Format(m, length.Centimetres), "or", length.Format(m, length.Inches))
	}
	// Output:
	// 6 mm or ¼ in
	// 41.5 mm or 1⅝ in
	// 62 cm or 24⅜ in
}

package formula_test

import (
	"fmt"

	"bodkin/seams/form"
	"bodkin/seams/formula"
)

func ExampleNew() {
	type measures struct {
		Bust float64 `expr:"bust"`
	}
	text := form.Text{Value: "bust / 4 + ease", At: form.Place{File: "top.yaml", Line: 7, Column: 10}}
	f := formula.New(text, formula.Number, formula.NamesOf(measures{}).With(formula.Number, "ease"))

	values := formula.ValuesOf(measures{Bust: 920})
	values["ease"] = 20.0
	fmt.Println(f.Number(values))
	// Output: 250 <nil>
}

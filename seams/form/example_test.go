package form_test

import (
	"fmt"

	"bodkin/seams/form"
	"bodkin/seams/length"
)

func ExampleDecode() {
	var job struct {
		Make string                `yaml:"make,required"`
		Size form.Pairs[length.MM] `yaml:"size"`
	}
	err := form.Decode("job.yaml", []byte("make: shell-top\nsize: {bust: 92 cm, hip: 38 in}\n"), &job)
	fmt.Println(job.Make, job.Size.Keys(), err)

	err = form.Decode("job.yaml", []byte("mkae: shell-top\nsize: {bust: 92}\n"), &job)
	fmt.Println(err)
	// Output:
	// shell-top [bust hip] <nil>
	// job.yaml:1:1: unknown key "mkae"
	//     mkae: shell-top
	//     ^~~~
	//   did you mean "make"?
	// job.yaml:2:14: "92" has no unit
	//     size: {bust: 92}
	//                  ^~
	//   add a unit, such as 92 mm; units are mm, cm, m, in, ft, yd
}

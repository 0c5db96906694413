package figure_test

import (
	"fmt"

	"bodkin/sheets/figure"
)

func ExampleFit() {
	cloth := figure.Rect(figure.Point{}, 30, 10, figure.Stroke{Width: figure.Thin}, figure.Fill{})
	items := append([]figure.Item{cloth}, figure.Dimension(figure.Point{}, figure.Point{X: 30}, 5, "30 mm", 2.8, even{})...)
	f := figure.Fit("strip", "A strip with its length", items, 1, even{})
	fmt.Printf("%.2f by %.2f mm, %v\n", f.Width, f.Height, f.Check())
	// Output: 32.25 by 18.78 mm, <nil>
}

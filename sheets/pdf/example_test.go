package pdf_test

import (
	"bytes"
	"fmt"

	"bodkin/sheets/pdf"
)

func ExampleWrite() {
	sheet := []byte("# Cushion cover\n\n### 1. Hem\n\n**Straight stitcher · 2.5 mm**\n\n- [ ] Turn 15 mm twice and stitch.\n")
	var file bytes.Buffer
	err := pdf.Write(&file, sheet, pdf.Options{Paper: pdf.A5, Lang: "en"})
	fmt.Println(err, string(file.Bytes()[:5]))
	// Output: <nil> %PDF-
}

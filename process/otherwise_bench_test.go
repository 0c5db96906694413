package process_test

import (
	"testing"

	"bodkin/process"
)

// What would change a seam's choice: the whole job anew for each change that might.
func BenchmarkWhatIf(b *testing.B) {
	shelf := loadShelf(b)
	g := garmentOf(b, "pull-on-skirt")
	in := process.Input{Job: jobFor(g, "linen-medium", "cotton-lawn"), Garment: g, Workroom: rooms()[0], Shelf: shelf}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := process.WhatIf(in, "side"); err != nil {
			b.Fatal(err)
		}
	}
}

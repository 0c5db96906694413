package seams

import "bodkin/seams/length"

// PerInch is stitches to the inch for a stitch length in mm above zero.
func PerInch(stitchMM float64) float64 { return float64(length.Inch) / stitchMM }

// PerCM is stitches to the centimetre for a stitch length in mm above zero.
func PerCM(stitchMM float64) float64 { return 10 / stitchMM }

// StitchMM is the stitch length in mm for a number of stitches to the inch.
func StitchMM(perInch float64) float64 { return float64(length.Inch) / perInch }

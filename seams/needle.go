package seams

// needleSizes pairs the blade in hundredths of a millimetre with the American
// number: Sewing Machine Needle Sizing (shoemaking.wiki) with 110/18 and
// 120/19 from two other charts, which agree against it. Up to 18 the pairs
// follow NM = 60 + 5 (US − 8) ("Needle number system", apparelscience.com).
func needleSizes() [][2]int {
	return [][2]int{
		{60, 8}, {65, 9}, {70, 10}, {75, 11}, {80, 12}, {85, 13}, {90, 14}, {95, 15}, {100, 16}, {110, 18}, {120, 19},
		{125, 20}, {130, 21}, {140, 22}, {160, 23}, {180, 24}, {200, 25}, {230, 26}, {250, 27},
	}
}

// NeedleUS is the American number of a machine needle; ok is false for a size
// that is not made.
func NeedleUS(nm int) (us int, ok bool) {
	for _, p := range needleSizes() {
		if p[0] == nm {
			return p[1], true
		}
	}
	return 0, false
}

// NeedleNM is the blade of a machine needle in hundredths of a millimetre; ok
// is false for a number that is not made.
func NeedleNM(us int) (nm int, ok bool) {
	for _, p := range needleSizes() {
		if p[1] == us {
			return p[0], true
		}
	}
	return 0, false
}

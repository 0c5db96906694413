package seams

// PartFacts are the part of the garment that an interfacing is weighed for. The
// name is a word of [PartOf], empty where a piece is steadied for its own sake.
type PartFacts struct {
	Name string `expr:"name" words:"band buttonhole collar cuff facing hem placket pocket-mouth stand waistband"`
}

// parts are the parts that want an interfacing, under the names that rules use,
// before the kinds of construction that make each. Where: facings, plackets,
// cuffs, collars, waistbands, hems, buttons and buttonholes; the stand and the
// pocket mouth beside them: common practice, no source.
func parts() map[string][]string {
	return map[string][]string{
		"band":         {"band", "front-band"},
		"buttonhole":   {"buttonhole", "button"},
		"collar":       {"shirt-collar", "flat-collar"},
		"cuff":         {"cuff"},
		"facing":       {"facing"},
		"hem":          {"hem"},
		"placket":      {"placket"},
		"pocket-mouth": {"patch-pocket", "slanted-pocket", "in-seam-pocket"},
		"stand":        {"stand-collar"},
		"waistband":    {"waistband"},
	}
}

// PartOf is the part that a kind of construction makes, as rules of interfacings
// name it; empty for a kind that steadies nothing.
func PartOf(kind string) string {
	for part, kinds := range parts() {
		for _, k := range kinds {
			if k == kind {
				return part
			}
		}
	}
	return ""
}

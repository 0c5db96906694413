package templates

import (
	"fmt"
	"maps"
	"strings"

	"bodkin/seams/form"
	"bodkin/seams/formula"
	"bodkin/templates/outline"
)

// insideOut reports the first piece that a value below nothing turns inside out: its outline
// runs the other way round than at the usual measures and the same choices, where
// that value is not below nothing. Such an outline is sound by itself, and the piece
// would be cut with the length that the measure is lacking.
func (w *workshop) insideOut(s *sheet) {
	if w.usual || w.turned || (outline.Outline{Edges: s.edges}).Area() >= 0 {
		return
	}
	var usual *workshop
	for _, v := range w.g.Values {
		x, ok := s.values[v.Key.Value].(float64)
		if !ok || x >= 0 {
			continue
		}
		if usual == nil {
			if usual = w.atUsualMeasures(); usual == nil {
				return
			}
		}
		as := usual.sheet(s.draft.Piece.Value)
		if as == nil || (outline.Outline{Edges: as.edges}).Area() <= 0 {
			return
		}
		if before, ok := as.values[v.Key.Value].(float64); !ok || before < 0 {
			continue
		}
		at, given := w.restsOn(v.Value.Value)
		if !given {
			at = v.Value.At
		}
		w.turned = true
		w.faults = append(w.faults, form.FaultAt(at, fmt.Sprintf("%s = %s comes out as %s, less than nothing, and turns the %s inside out",
			v.Key.Value, v.Value.Value, said(x), strings.ToLower(s.draft.Title)), "",
			"look again at the measures and choices; if they are right, the formula must be changed for them"))
		return
	}
}

// atUsualMeasures draws the garment at its usual measures with the choices in hand;
// nil where it cannot be drawn so.
func (w *workshop) atUsualMeasures() *workshop {
	in, err := w.whole.take(nil, nil)
	if err != nil {
		return nil
	}
	first := maps.Clone(in.scopes[0])
	for _, c := range w.whole.Choices {
		first[c.Key.Value] = w.in.scopes[0][c.Key.Value]
	}
	in = &given{scopes: []formula.Values{first}}
	if err := w.whole.again(in); err != nil {
		return nil
	}
	usual := &workshop{g: w.g, whole: w.whole, in: in, made: &Made{Garment: w.g}, shortened: map[ChainPart]float64{}, usual: true}
	_ = usual.draw() // the first outline that fails ends it; what is drawn is compared
	return usual
}

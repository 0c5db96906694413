package pdf

import "bodkin/sheets/pdf/typeface"

const mmPerPoint = 25.4 / 72

// look is how a stretch of words is set.
type look struct {
	style  typeface.Style
	size   float64 // mm
	light  float64
	code   bool
	strike bool
	to     target
}

// measure are the sizes of a sheet, all in mm, all from its type size.
type measure struct {
	size   float64 // of the body
	lead   float64 // from one baseline to the next
	number float64 // that a step's heading begins with, in sizes of the body
}

// usualStep is the size of headings of level 3 in sizes of the body.
const usualStep = 1.12

func measureOf(points, number float64) measure {
	size := points * mmPerPoint
	return measure{size: size, lead: 1.36 * size, number: number}
}

// The scale of headings in body sizes: one step of about 1.2 from level to
// level, and lines set closer as they grow.
func (m measure) heading(level int) (size, lead, before, after float64, style typeface.Style) {
	style = typeface.Bold
	switch level {
	case 1:
		return 2.0 * m.size, 1.7 * m.lead, 1.5 * m.lead, 0.5 * m.lead, style
	case 2:
		return 1.38 * m.size, 1.3 * m.lead, 1.3 * m.lead, 0.4 * m.lead, style
	case 3:
		return usualStep * m.size, 0.98 * usualStep * m.lead, 0.9 * m.lead, 0.3 * m.lead, style
	case 4:
		return m.size, m.lead, 0.75 * m.lead, 0.15 * m.lead, style
	case 5:
		return m.size, m.lead, 0.6 * m.lead, 0.1 * m.lead, style | typeface.Oblique
	}
	return m.size, m.lead, 0.5 * m.lead, 0.1 * m.lead, typeface.Oblique
}

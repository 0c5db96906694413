package length

import (
	"math"
	"strconv"
	"strings"
)

// Style says in which units lengths are written for a reader.
type Style int

const (
	Centimetres Style = iota // mm and cm; metres where long
	Inches                   // inches and fractions; yards where long
)

// UnmarshalText reads "cm" or "in".
func (s *Style) UnmarshalText(text []byte) error {
	switch word := string(text); word {
	case "cm":
		*s = Centimetres
	case "in":
		*s = Inches
	default:
		e := &Error{Text: word, Problem: "is not a way to write lengths", Mend: "write cm or in"}
		switch nearestUnit(word) {
		case "cm", "mm", "m":
			e.Nearest = "cm"
		case "in", "ft", "yd":
			e.Nearest = "in"
		}
		return e
	}
	return nil
}

// String is the word that UnmarshalText reads.
func (s Style) String() string {
	if s == Inches {
		return "in"
	}
	return "cm"
}

// Format writes a length for a reader, with its unit.
//
// Centimetres: to the tenth of a millimetre below 10 mm ("6 mm", "1.5 mm"), to
// the half millimetre below 10 cm, since no hand marks finer ("12.5 mm"), from
// there to the tenth of a centimetre ("62 cm", "11.4 cm").
// Inches: to the nearest sixteenth up to 12 in ("¼ in", "1⅝ in", "³⁄₁₆ in"), to
// the nearest eighth above; what would vanish is written as a decimal.
// The number is converted exactly, not by the trade's roundings: 15 mm reads
// ⁹⁄₁₆ in, not ⅝ in. Every result can be read back by [Parse].
func Format(m MM, style Style) string {
	v, sign := split(m)
	if style == Inches {
		return sign + inches(v)
	}
	if tenths := math.Round(v * 10); tenths < 100 {
		if v > 0 && v < 0.095 {
			return sign + small(v) + " mm"
		}
		return sign + decimal(tenths, 1) + " mm"
	}
	if halves := math.Round(v * 2); halves < 200 {
		return sign + decimal(halves*5, 1) + " mm"
	}
	return sign + decimal(math.Round(v), 1) + " cm"
}

// Long writes the length of cloth or thread: metres to the hundredth ("3.2 m")
// or yards to the nearest eighth ("3½ yd").
func Long(m MM, style Style) string {
	v, sign := split(m)
	if style == Inches {
		return sign + eighths(v/float64(Yard)) + " yd"
	}
	return sign + decimal(math.Round(v/10), 2) + " m"
}

// split parts the sign; a thousandth of a millimetre is the least that counts.
func split(m MM) (abs float64, sign string) {
	if abs = math.Abs(float64(m)); abs < 0.001 {
		return 0, ""
	}
	if m < 0 {
		sign = "-"
	}
	return abs, sign
}

func inches(mm float64) string {
	in := mm / float64(Inch)
	if in > 12 {
		return eighths(in) + " in"
	}
	n := math.Round(in * 16)
	if n == 0 && in > 0 {
		return small(in) + " in"
	}
	return mixed(n, 16) + " in"
}

func eighths(v float64) string {
	n := math.Round(v * 8)
	if n == 0 && v > 0 {
		return small(v)
	}
	return mixed(n, 8)
}

// small writes what rounding to a step would lose, to one significant figure,
// so that it still reads back as more than nothing.
func small(v float64) string {
	places := min(12, -int(math.Floor(math.Log10(v))))
	return strings.TrimSuffix(strings.TrimRight(strconv.FormatFloat(v, 'f', places, 64), "0"), ".")
}

// decimal writes n units of the given decimal place, without trailing zeros.
func decimal(n float64, places int) string {
	s := strconv.FormatFloat(n/math.Pow10(places), 'f', places, 64)
	return strings.TrimSuffix(strings.TrimRight(s, "0"), ".")
}

// mixed writes n parts of one, where d parts make a whole.
func mixed(n float64, d int) string {
	whole := math.Floor(n / float64(d))
	num := int(n - whole*float64(d))
	if num == 0 {
		return strconv.FormatFloat(whole, 'f', 0, 64)
	}
	s := ""
	if whole > 0 {
		s = strconv.FormatFloat(whole, 'f', 0, 64)
	}
	for num%2 == 0 {
		num, d = num/2, d/2
	}
	switch {
	case d == 2:
		return s + "½"
	case d == 4 && num == 1:
		return s + "¼"
	case d == 4:
		return s + "¾"
	case d == 8:
		return s + string([]rune("⅛⅜⅝⅞")[num/2])
	}
	return s + digits(num, superscripts) + "⁄" + digits(d, subscripts)
}

func digits(n int, set string) string {
	runes := []rune(set)
	var b strings.Builder
	for _, c := range strconv.Itoa(n) {
		b.WriteRune(runes[c-'0'])
	}
	return b.String()
}

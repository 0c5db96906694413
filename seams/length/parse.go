package length

import (
	"math"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

// unitsHelp names the units in the order of the mend sentences.
const unitsHelp = "units are mm, cm, m, in, ft, yd"

// Parse reads a length with its unit: mm, cm, m, in (or "), ft, yd. The number
// is a decimal with a point, a fraction, or a whole with a fraction: "15 mm",
// "0.75 in", "5/8 in", "1 5/8 in", "1 ⅝ in". A leading sign is accepted; the
// caller decides whether a negative length makes sense. The error is an [*Error].
func Parse(s string) (MM, error) {
	sc := scanner{whole: s, rest: strings.TrimSpace(s)}
	if !utf8.ValidString(s) {
		return 0, sc.fail("is not readable text", "", "write a number and a unit, such as 15 mm")
	}
	if sc.rest == "" {
		return 0, sc.fail("is empty", "", "write a number and a unit, such as 15 mm")
	}
	sign := sc.sign()
	n, err := sc.number()
	if err != nil {
		return 0, err
	}
	u, err := sc.unit()
	if err != nil {
		return 0, err
	}
	mm := MM(sign*n) * u
	if math.Abs(float64(mm)) > float64(Longest) {
		return 0, sc.fail("is longer than a kilometre", "", "check the number and its unit")
	}
	return mm + 0, nil // + 0 turns a negative zero into zero
}

type scanner struct{ whole, rest string }

func (sc *scanner) fail(problem, nearest, mend string) error {
	return &Error{Text: sc.whole, Problem: problem, Nearest: nearest, Mend: mend}
}

func (sc *scanner) sign() float64 {
	for _, m := range []string{"-", "−"} {
		if r, ok := strings.CutPrefix(sc.rest, m); ok {
			sc.rest = strings.TrimLeftFunc(r, unicode.IsSpace)
			return -1
		}
	}
	sc.rest = strings.TrimPrefix(sc.rest, "+")
	return 1
}

// number reads a decimal, a fraction, or a whole and a fraction.
func (sc *scanner) number() (float64, error) {
	if f, ok, err := sc.fraction(); ok || err != nil {
		return f, err
	}
	digits := sc.take(isDigit)
	point := strings.HasPrefix(sc.rest, ".")
	after := ""
	if point {
		sc.rest = sc.rest[1:]
		after = sc.take(isDigit)
	}
	switch {
	case digits == "" && after == "":
		return 0, sc.fail("does not start with a number", "", "write a number and a unit, such as 15 mm")
	case point && after == "":
		return 0, sc.fail("has a point with nothing after it", "", "write "+digits+" or "+digits+".0")
	case strings.HasPrefix(sc.rest, ","):
		tail := strings.TrimLeft(sc.rest, ",")
		return 0, sc.fail("has a comma in the number", "", "write a decimal with a point: "+digits+"."+strings.TrimSpace(tail))
	case len(digits) > 12 || len(after) > 12:
		return 0, sc.fail("has too many digits", "", "check the number")
	}
	n, err := strconv.ParseFloat("0"+digits+"."+after+"0", 64)
	if err != nil {
		return 0, sc.fail("has a number that cannot be read", "", "write a number and a unit, such as 15 mm")
	}
	if point {
		return n, nil
	}
	mark := sc.rest
	sc.space()
	f, ok, err := sc.fraction()
	if err != nil {
		return 0, err
	}
	if ok && f >= 1 {
		return 0, sc.fail("has a fraction of one or more after a whole number", "", "write the whole as one number")
	}
	if !ok {
		sc.rest = mark
		if strings.HasPrefix(mark, "-") && len(mark) > 1 && mark[1] >= '0' && mark[1] <= '9' {
			return 0, sc.fail("has a hyphen inside the number", "", "write a space before the fraction, such as 1 5/8 in")
		}
	}
	return n + f, nil
}

// vulgar are the single-character fractions of Unicode that a ruler has.
func vulgar(r rune) (float64, bool) {
	switch r {
	case '½':
		return 1. / 2, true
	case '⅓':
		return 1. / 3, true
	case '⅔':
		return 2. / 3, true
	case '¼':
		return 1. / 4, true
	case '¾':
		return 3. / 4, true
	case '⅛':
		return 1. / 8, true
	case '⅜':
		return 3. / 8, true
	case '⅝':
		return 5. / 8, true
	case '⅞':
		return 7. / 8, true
	}
	return 0, false
}

// fraction reads ⅝, 5/8 or ⁵⁄₁₆ at the start of the rest. ok is false, and
// nothing consumed, where no fraction starts there (1⁵⁄₁₆ starts with a whole).
func (sc *scanner) fraction() (f float64, ok bool, err error) {
	r, size := utf8.DecodeRuneInString(sc.rest)
	if v, is := vulgar(r); is {
		sc.rest = sc.rest[size:]
		return v, true, nil
	}
	mark := sc.rest
	top := sc.take(isDigit)
	if top == "" {
		top = plainDigits(sc.take(isRaised))
	}
	r, size = utf8.DecodeRuneInString(sc.rest)
	if top == "" || (r != '/' && r != '⁄') {
		sc.rest = mark
		return 0, false, nil
	}
	sc.rest = sc.rest[size:]
	bottom := plainDigits(sc.take(isLowered))
	n, errN := strconv.Atoi(top)
	d, errD := strconv.Atoi(bottom)
	if errN != nil || errD != nil || d <= 0 || n > 9999 || d > 9999 {
		return 0, true, sc.fail("has a fraction that cannot be read", "", "write it like 5/8")
	}
	return float64(n) / float64(d), true, nil
}

// unit reads the unit, which must be the last thing in the text.
func (sc *scanner) unit() (MM, error) {
	sc.space()
	word := strings.TrimSpace(sc.rest)
	if word == "" {
		return 0, sc.fail("has no unit", "", "add a unit, such as "+strings.TrimSpace(sc.whole)+" mm; "+unitsHelp)
	}
	if m, ok := unitOf(word); ok {
		return m, nil
	}
	if near := nearestUnit(word); near != "" {
		return 0, sc.fail("has an unknown unit "+strconv.Quote(word), near, unitsHelp)
	}
	return 0, sc.fail("has "+strconv.Quote(word)+" where the unit should be", "", unitsHelp)
}

func unitOf(word string) (MM, bool) {
	switch word {
	case "mm":
		return Millimetre, true
	case "cm":
		return Centimetre, true
	case "m":
		return Metre, true
	case "in", `"`, "″":
		return Inch, true
	case "ft":
		return Foot, true
	case "yd":
		return Yard, true
	}
	return 0, false
}

// nearestUnit is the unit that a longer or misspelt word most likely means.
func nearestUnit(word string) string {
	w := strings.TrimRight(strings.ToLower(word), ".s")
	if _, ok := unitOf(w); ok {
		return w
	}
	for _, p := range []struct{ start, unit string }{
		{"milli", "mm"}, {"centi", "cm"}, {"met", "m"}, {"inc", "in"}, {"foot", "ft"},
		{"feet", "ft"}, {"yar", "yd"}, {"'", "ft"}, {"''", "in"}, {"”", "in"}, {"“", "in"},
		{"c", "cm"}, {"mi", "mm"}, {"mn", "mm"}, {"nm", "mm"}, {"i", "in"}, {"y", "yd"}, {"f", "ft"}, {"m", "mm"},
	} {
		if strings.HasPrefix(w, p.start) && utf8.RuneCountInString(w) <= 12 {
			if w == "''" {
				return "in"
			}
			return p.unit
		}
	}
	return ""
}

func (sc *scanner) space() { sc.rest = strings.TrimLeftFunc(sc.rest, unicode.IsSpace) }

func (sc *scanner) take(ok func(rune) bool) string {
	end := strings.IndexFunc(sc.rest, func(r rune) bool { return !ok(r) })
	if end < 0 {
		end = len(sc.rest)
	}
	taken := sc.rest[:end]
	sc.rest = sc.rest[end:]
	return taken
}

func isDigit(r rune) bool { return r >= '0' && r <= '9' }

func isRaised(r rune) bool { return strings.ContainsRune(superscripts, r) }

func isLowered(r rune) bool { return isDigit(r) || strings.ContainsRune(subscripts, r) }

const (
	superscripts = "⁰¹²³⁴⁵⁶⁷⁸⁹"
	subscripts   = "₀₁₂₃₄₅₆₇₈₉"
)

// plainDigits turns raised and lowered digits into ordinary ones.
func plainDigits(s string) string {
	var b strings.Builder
	for _, r := range s {
		digit := r
		for _, set := range []string{superscripts, subscripts} {
			if i := strings.IndexRune(set, r); i >= 0 {
				digit = '0' + rune(utf8.RuneCountInString(set[:i]))
			}
		}
		b.WriteRune(digit)
	}
	return b.String()
}

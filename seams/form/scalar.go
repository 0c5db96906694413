package form

import (
	"math"
	"reflect"
	"strconv"
	"strings"
)

// scalar refuses anything but a scalar, and unquoted numbers in a notation
// that YAML readers disagree about.
func (d *decoder) scalar(n *Node, wanted string) bool {
	if n.kind != scalar {
		mend := ""
		if n.flow {
			mend = "where words start with a bracket or brace, put them in quotes"
		}
		d.fault(n, wanted+" is wanted here, not "+n.kind.String(), "", mend)
		return false
	}
	if message, mend := oddNumber(n); message != "" {
		d.fault(n, message, "", mend)
		return false
	}
	return true
}

// oddNumber says what is odd about an unquoted number: 010, 1_000, 0x1F, .inf.
func oddNumber(n *Node) (message, mend string) {
	if !n.plain {
		return "", ""
	}
	t := strings.TrimLeft(n.text, "+-")
	lower := strings.ToLower(t)
	quote := `, or put it in quotes if it is a word: "` + n.text + `"`
	switch {
	case lower == ".inf" || lower == ".nan":
		return "this is not a number that can be sewn", "write a number" + quote
	case len(t) > 1 && t[0] == '0' && strings.Trim(t, "0123456789_.") == "" && t[1] != '.':
		return "a number with a leading zero", "write it without" + quote
	case t != "" && t[0] >= '0' && t[0] <= '9' && strings.Contains(t, "_") && strings.Trim(t, "0123456789_.") == "":
		return "a number with an underscore", "write " + strings.ReplaceAll(n.text, "_", "") + quote
	case len(t) > 2 && t[0] == '0' && strings.ContainsAny(t[1:2], "xXoObB") && strings.Trim(lower[2:], "0123456789abcdef_") == "":
		return "a number that is not decimal", "write it as a decimal number" + quote
	}
	return "", ""
}

// looksNumeric reports whether an unquoted scalar is a decimal number.
func looksNumeric(s string) bool {
	if s == "" || strings.Trim(s, "+-0123456789.") != "" {
		return false
	}
	_, err := strconv.ParseFloat(s, 64)
	return err == nil
}

func (d *decoder) str(n *Node, v reflect.Value, oneOf string) {
	if !d.scalar(n, "text") {
		return
	}
	if word := n.text; n.plain && (looksNumeric(word) || word == "true" || word == "false") {
		d.fault(n, "text is wanted here, not "+word, "", `put it in quotes: "`+word+`"`)
		return
	}
	if d.listed(n, oneOf) {
		v.SetString(n.text)
	}
}

// listed refuses a word that is not in a closed list.
func (d *decoder) listed(n *Node, oneOf string) bool {
	words := strings.Fields(oneOf)
	for _, w := range words {
		if w == n.text {
			return true
		}
	}
	if len(words) == 0 {
		return true
	}
	d.fault(n, strconv.Quote(n.text)+" is not one of "+strings.Join(words, ", "), Nearest(n.text, words), "")
	return false
}

func (d *decoder) boolean(n *Node, v reflect.Value) {
	if !d.scalar(n, "true or false") {
		return
	}
	nearest := ""
	switch word := n.text; {
	case n.plain && word == "true":
		v.SetBool(true)
		return
	case n.plain && word == "false":
		v.SetBool(false)
		return
	default:
		switch strings.ToLower(word) {
		case "true", "yes", "y", "on", "1":
			nearest = "true"
		case "false", "no", "n", "off", "0":
			nearest = "false"
		default:
			nearest = Nearest(word, []string{"true", "false"})
		}
	}
	d.fault(n, "true or false is wanted here, not "+n.said(), nearest, "write it without quotes")
}

func (d *decoder) integer(n *Node, v reflect.Value) {
	if !d.scalar(n, "a whole number") {
		return
	}
	f, ok := d.number(n)
	if !ok {
		return
	}
	if f != math.Trunc(f) || strings.Contains(n.text, ".") {
		d.fault(n, "a whole number is wanted here, not "+n.text, "", "write it without a point")
		return
	}
	if math.Abs(f) > 1<<53 || v.OverflowInt(int64(f)) {
		d.fault(n, n.text+" is too large a number", "", "")
		return
	}
	v.SetInt(int64(f))
}

// number reads an unquoted decimal number.
func (d *decoder) number(n *Node) (float64, bool) {
	t := n.text
	digits := strings.TrimLeft(t, "+-")
	switch {
	case !n.plain && looksNumeric(t):
		d.fault(n, "a number is wanted here, not text in quotes", "", "write "+t+" without quotes")
	case strings.Contains(t, ",") && looksNumeric(strings.Replace(t, ",", ".", 1)):
		d.fault(n, "a number has a comma", "", "write a decimal with a point: "+strings.Replace(t, ",", ".", 1))
	case !looksNumeric(t):
		d.fault(n, "a number is wanted here, not "+n.said(), "", "")
	case strings.HasPrefix(digits, ".") || strings.HasSuffix(digits, "."):
		d.fault(n, "a number needs figures on both sides of the point", "", "write it like 0.5 or 5.0")
	default:
		f, err := strconv.ParseFloat(t, 64)
		if err != nil || math.IsInf(f, 0) {
			d.fault(n, n.text+" is too large a number", "", "")
			return 0, false
		}
		return f, true
	}
	return 0, false
}

// measured reads a number that may carry its unit, such as 60 or 60 g/m2. The
// units are those of a field's tag: "g/m2=1 oz/yd2=33.906".
func (d *decoder) measured(n *Node, v reflect.Value, units string) {
	if n.kind == nothing {
		d.value(n, v, "")
		return
	}
	if !d.scalar(n, "a number") {
		return
	}
	digits := strings.TrimRight(n.text[:len(n.text)-len(strings.TrimLeft(n.text, "+-0123456789.,"))], " ")
	said := strings.TrimSpace(n.text[len(digits):])
	if said == "" {
		if f, ok := d.number(n); ok {
			v.SetFloat(f)
		}
		return
	}
	var known []string
	for _, u := range strings.Fields(units) {
		unit, worth, _ := strings.Cut(u, "=")
		known = append(known, unit)
		if unit != said {
			continue
		}
		plain := *n
		plain.text, plain.plain = digits, true
		factor, err := strconv.ParseFloat(worth, 64)
		if err != nil {
			panic("form: a unit needs what it counts for: " + u)
		}
		if f, ok := d.number(&plain); ok {
			v.SetFloat(f * factor)
		}
		return
	}
	if digits == "" {
		d.fault(n, "a number is wanted here, not "+n.said(), "", "")
		return
	}
	d.fault(n, strconv.Quote(said)+" is no unit here", Nearest(said, known), "the units are "+strings.Join(known, ", ")+"; the first where none is written")
}

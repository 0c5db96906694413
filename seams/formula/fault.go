package formula

import (
	"errors"
	"regexp"
	"strconv"
	"strings"

	"github.com/expr-lang/expr/file"

	"bodkin/seams/form"
)

// fault puts an error of the formula language into our words at its place.
func (f *Formula) fault(err error) form.Fault {
	e, ok := errors.AsType[*file.Error](err)
	if !ok {
		first, _, _ := strings.Cut(err.Error(), "\n")
		return f.whole("cannot be worked out: "+first, "", "")
	}
	message, nearest, mend := f.plainWords(e.Message)
	return f.text.Fault(e.From, max(1, e.To-e.From), message, nearest, mend)
}

func (f *Formula) plainWords(m string) (message, nearest, mend string) {
	if name, ok := strings.CutPrefix(m, "unknown name "); ok {
		nearest = form.Nearest(name, f.names.top())
		if nearest == "" {
			mend = "the names here are " + strings.Join(f.names.top(), ", ")
		}
		return "unknown name " + strconv.Quote(name), nearest, mend
	}
	if name, ok := strings.CutPrefix(m, "unknown field "); ok {
		if nearest = form.Nearest(name, f.names.fields); nearest == "" {
			mend = "the names after a point are " + strings.Join(f.names.fields, ", ")
		}
		return "unknown name " + strconv.Quote(name) + " after the point", nearest, mend
	}
	switch {
	case m == "unexpected token EOF":
		return "the formula ends too early", "", "write what should follow, or take the last sign away"
	case m == `unexpected token Operator("=")`:
		return "a single = stands here", "==", "write == to compare"
	}
	return kindWords(m), "", mendOf(m)
}

// mendOf is how to mend what the formula language says of itself.
func mendOf(m string) string {
	switch {
	case m == errDivision.Error():
		return "divide by what is never 0, or ask first: x > 0 ? y / x : 0"
	case m == errRoot.Error():
		return "take the root of what is never below 0, or of max(0, x)"
	case m == errTangent.Error():
		return "keep the angle below 90 degrees"
	case strings.Contains(m, "mismatched types"):
		return "compare and reckon with values of one kind"
	case strings.Contains(m, "arguments to call"):
		return "give in the brackets what the function asks for"
	}
	return "write numbers, names, + - * / and comparisons, brackets in pairs"
}

// kindWords says types as kinds of values.
func kindWords(m string) string {
	m = regexp.MustCompile(`\b(float64|int)\b`).ReplaceAllString(m, "number")
	m = regexp.MustCompile(`\bstring\b`).ReplaceAllString(m, "words")
	m = regexp.MustCompile(`\bbool\b`).ReplaceAllString(m, "truth")
	m = regexp.MustCompile(`types\.Map\{.*\}`).ReplaceAllString(m, "group")
	return strings.TrimSpace(m)
}

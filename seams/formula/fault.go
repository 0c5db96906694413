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
		return "unknown name " + strconv.Quote(name) + " after the point", form.Nearest(name, f.names.fields), ""
	}
	switch {
	case m == "unexpected token EOF":
		return "the formula ends too early", "", ""
	case m == `unexpected token Operator("=")`:
		return "a single = stands here", "==", "write == to compare"
	}
	return kindWords(m), "", ""
}

// kindWords says types as kinds of values.
func kindWords(m string) string {
	m = regexp.MustCompile(`\b(float64|int)\b`).ReplaceAllString(m, "number")
	m = regexp.MustCompile(`\bstring\b`).ReplaceAllString(m, "words")
	m = regexp.MustCompile(`\bbool\b`).ReplaceAllString(m, "truth")
	m = regexp.MustCompile(`types\.Map\{.*\}`).ReplaceAllString(m, "group")
	return strings.TrimSpace(m)
}

package seams_test

import (
	"errors"
	"fmt"
	"regexp"
	"slices"
	"strings"
	"testing"

	"bodkin/seams"
	"bodkin/seams/form"
)

// apart is the text as a user's file of its own among others: what it brings
// has names that no other brings. mark is what the names end in.
func apart(i int, text string) (f seams.File, mark string) {
	mark = fmt.Sprintf("-apart%02d", i)
	var brought []string
	for _, m := range regexp.MustCompile(`(?m)^- [a-z-]+: (\S+)$`).FindAllStringSubmatch(text, -1) {
		brought = append(brought, m[1])
	}
	named := regexp.MustCompile(`(?m)^(?:- [a-z-]+|  like): (\S+)$`)
	text = named.ReplaceAllStringFunc(text, func(line string) string {
		if slices.Contains(brought, named.FindStringSubmatch(line)[1]) {
			return line + mark
		}
		return line
	})
	return seams.File{Name: fmt.Sprintf("mine%s.yaml", mark), Data: []byte(text)}, mark
}

// faultsApart are the faults of each text as a user's file, told as if it were
// alone and named mine.yaml. They are read together, because reading ours for
// each is nearly all of the time; a file whose faults are told is left out of
// the next reading, since what cannot be read is told before what does not fit.
func faultsApart(t *testing.T, texts []string) []form.Faults {
	t.Helper()
	out := make([]form.Faults, len(texts))
	for {
		var files []seams.File
		owner := map[string]int{}
		for i, text := range texts {
			if out[i] == nil {
				f, _ := apart(i, text)
				owner[f.Name] = i
				files = append(files, f)
			}
		}
		_, err := seams.Load(files...)
		if err == nil {
			return out
		}
		faults, ok := errors.AsType[form.Faults](err)
		if !ok {
			t.Fatalf("no faults but %v", err)
		}
		for _, f := range faults {
			i, ok := owner[f.File]
			if !ok {
				t.Fatalf("a fault of another file: %v", f)
			}
			_, mark := apart(i, "")
			for _, words := range []*string{&f.File, &f.Message, &f.Nearest, &f.Mend} {
				*words = strings.ReplaceAll(*words, mark, "")
			}
			out[i] = append(out[i], f)
		}
	}
}

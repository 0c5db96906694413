package main

import (
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"time"

	"github.com/spf13/pflag"
	"github.com/spf13/viper"

	"bodkin/sheets"
)

// settings are what flags and BODKIN_ variables come to; a flag wins over a
// variable. A job and then the workroom file have their say only where these
// are silent, which is for the planner to see.
type settings struct {
	workroom string          // file; empty where none is named
	shelf    []string        // files and folders of the maker's own
	units    string          // cm, in, or empty
	paper    string          // one of papers
	typeSize float64         // points; 0 is the usual
	within   time.Duration   // for the search; 0 is no search
	reader   string          // one of sheets.Readers
	detail   string          // brief or full
	figures  string          // one of figurePlaces
	wording  *sheets.Wording // of the sheet; nil is English
	steps    []int           // of the plan, that the sheet tells; none means all
}

func settingNames() []string {
	return []string{"workroom", "shelf", "units", "paper", "type-size", "within", "for", "detail", "figures", "wording"}
}

// variableOf is the environment variable that speaks of the same thing as a
// flag.
func variableOf(flag string) string {
	return "BODKIN_" + strings.ToUpper(strings.ReplaceAll(flag, "-", "_"))
}

// Bounds of the settings: type below 6 points cannot be read and above 24 does
// not fit a table; no search is worth more than a day.
const (
	leastType  = 6.0
	mostType   = 24.0
	mostWithin = 24 * time.Hour
)

func unitWords() []string { return []string{"cm", "in"} }
func papers() []string    { return []string{"a4", "a5", "letter"} }
func details() []string   { return []string{"brief", "full"} }

// figurePlaces are where the figures of Markdown go: files beside it, into it,
// or nowhere.
func figurePlaces() []string { return []string{"files", "inline", "none"} }

// addSettings gives a command the flags of those settings that mean something
// to it. All are texts, so that a flag and a variable are read the same way.
func addSettings(f *pflag.FlagSet, names ...string) {
	for _, n := range names {
		switch n {
		case "workroom":
			f.String(n, "", "`FILE` of the workroom; else workroom.yaml here, else workroom.yaml in the folder bodkin of your configuration folder")
		case "shelf":
			f.StringArray(n, nil, "`FILE` of your own for the shelf, or a folder of them; may be given again; yours win by name")
		case "units":
			f.String(n, "", "`UNIT` that lengths are written in: cm or in")
		case "paper":
			f.String(n, "a4", "`PAPER` of the PDF: a4, a5 or letter")
		case "type-size":
			f.String(n, "", "size of the type in the PDF, 6 to 24 `POINTS`")
		case "for":
			f.String(n, "maker", "`READER` of the sheet: maker, bench or class")
		case "detail":
			f.String(n, "full", "`DETAIL`: full, or brief for a sheet without reasons")
		case "figures":
			f.String(n, "files", "`PLACE` of the figures of Markdown: files, inline or none")
		case "wording":
			f.String(n, "", "`DIR` with files of your own sentences for the sheet, or one such file; bodkin start --wording writes all there are")
		case "within":
			f.String(n, "10s", "`TIME` that the search for the best order may take; 0s for a quick order")
		}
		_ = f.SetAnnotation(n, setting, nil) // fails only where the flag is not there
	}
}

// setting marks the flags that are settings: list's --for is not the sheet's.
const setting = "setting"

// settingFlag is the flag of a setting, nil where the command does not have it.
func settingFlag(f *pflag.FlagSet, name string) *pflag.Flag {
	if flag := f.Lookup(name); flag != nil && isSetting(flag) {
		return flag
	}
	return nil
}

func isSetting(flag *pflag.Flag) bool {
	_, ok := flag.Annotations[setting]
	return ok
}

// loadSettings merges flags and variables. Variables that name no setting are
// passed over, and so are those that mean nothing to the command.
func loadSettings(f *pflag.FlagSet) (settings, error) {
	v := viper.New()
	v.SetEnvPrefix("bodkin")
	v.SetEnvKeyReplacer(strings.NewReplacer("-", "_"))
	v.AutomaticEnv()
	said := map[string]string{} // who says so, for messages
	for _, n := range settingNames() {
		flag := settingFlag(f, n)
		if flag == nil {
			continue
		}
		if err := v.BindPFlag(n, flag); err != nil {
			return settings{}, err
		}
		said[n] = variableOf(n)
		if flag.Changed {
			said[n] = "--" + n
		}
	}
	r := settingReader{said: said, text: func(name string) string {
		if said[name] == "" {
			return ""
		}
		return v.GetString(name)
	}}
	s := settings{
		workroom: r.text("workroom"),
		units:    r.oneOf("units", unitWords()),
		paper:    r.oneOf("paper", papers()),
		typeSize: r.points("type-size"),
		within:   r.duration("within"),
		reader:   r.oneOf("for", sheets.Readers()),
		detail:   r.oneOf("detail", details()),
		figures:  r.oneOf("figures", figurePlaces()),
	}
	if r.err == nil {
		s.wording, r.err = ownWording(r.text("wording"))
	}
	if flag := f.Lookup("shelf"); flag != nil && flag.Changed {
		s.shelf = v.GetStringSlice("shelf")
	} else if flag != nil {
		// A variable lists files as PATH does: a name may have spaces in it.
		s.shelf = filepath.SplitList(os.Getenv(variableOf("shelf")))
	}
	return s, r.err
}

// settingReader reads settings from texts and keeps the first error.
type settingReader struct {
	text func(name string) string
	said map[string]string
	err  error
}

func (r *settingReader) fail(err error) {
	if r.err == nil {
		r.err = err
	}
}

func (r *settingReader) oneOf(name string, words []string) string {
	given := r.text(name)
	word := strings.ToLower(given)
	if given != "" && !slices.Contains(words, word) {
		r.fail(unknown(given, words, "write one of "+strings.Join(words, ", "), "%s cannot be %q", r.said[name], given))
	}
	return word
}

func (r *settingReader) points(name string) float64 {
	given := r.text(name)
	if given == "" {
		return 0
	}
	points, err := strconv.ParseFloat(given, 64)
	if err != nil || !(points >= leastType && points <= mostType) {
		r.fail(wrong("write a number of points from 6 to 24, such as 10.5", "%s cannot be %q", r.said[name], given))
	}
	return points
}

func (r *settingReader) duration(name string) time.Duration {
	given := r.text(name)
	if given == "" {
		return 0
	}
	d, err := time.ParseDuration(given)
	if err != nil || d < 0 || d > mostWithin {
		r.fail(wrong("write a time with its unit, such as 10s or 2m, or 0s for a quick order", "%s cannot be %q", r.said[name], given))
	}
	return d
}

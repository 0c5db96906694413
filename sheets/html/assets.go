package html

import (
	"embed"
	"html/template"
)

//go:embed page
var files embed.FS

// assets are the files of this package, read.
type assets struct {
	frame         *template.Template
	style, script string
}

func readAssets() (assets, error) {
	var a assets
	style, err := files.ReadFile("page/style.css")
	if err != nil {
		return a, err
	}
	script, err := files.ReadFile("page/ticks.js")
	if err != nil {
		return a, err
	}
	a.style, a.script = string(style), string(script)
	a.frame, err = template.ParseFS(files, "page/frame.html")
	return a, err
}

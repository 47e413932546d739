package main

import (
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"path"
	"path/filepath"
	"strings"

	"github.com/evanw/esbuild/pkg/api"
)

// files are the built files by name.
type files map[string][]byte

// build makes the whole page in memory from the folder that holds ui and node_modules.
func build(dir string) (files, error) {
	if _, err := os.Stat(filepath.Join(dir, "node_modules")); err != nil {
		return nil, fmt.Errorf("the packages of the page are not there; fetch them with npm ci --prefix %s: %w", dir, err)
	}
	result := api.Build(options(dir))
	if len(result.Errors) > 0 {
		return nil, errors.New(strings.Join(api.FormatMessages(result.Errors, api.FormatMessagesOptions{}), "\n"))
	}
	page := files{}
	for _, f := range result.OutputFiles {
		page[filepath.Base(f.Path)] = f.Contents
	}
	made, err := readMeta(result.Metafile)
	if err != nil {
		return nil, err
	}
	index, err := os.ReadFile(filepath.Join(dir, "ui", "index.html"))
	if err != nil {
		return nil, err
	}
	if page["index.html"], err = indexOf(string(index), made); err != nil {
		return nil, err
	}
	if page["icon.svg"], err = os.ReadFile(filepath.Join(dir, "ui", "icon.svg")); err != nil {
		return nil, err
	}
	page["LICENSES.txt"], err = licences(dir, made)
	return page, err
}

func options(dir string) api.BuildOptions {
	return api.BuildOptions{
		AbsWorkingDir:       dir,
		EntryPointsAdvanced: []api.EntryPoint{{InputPath: "ui/main.tsx", OutputPath: "app"}},
		Outdir:              "dist",
		EntryNames:          "[name]-[hash]",
		ChunkNames:          "part-[hash]",
		Bundle:              true,
		Splitting:           true,
		Format:              api.FormatESModule,
		Target:              api.ES2022,
		JSX:                 api.JSXAutomatic,
		JSXImportSource:     "preact",
		MinifyWhitespace:    true,
		MinifyIdentifiers:   true,
		MinifySyntax:        true,
		LegalComments:       api.LegalCommentsNone, // the licences stand in a file of their own
		External:            []string{"/fonts/*"},
		Metafile:            true,
		Write:               false,
	}
}

// meta is what esbuild says about what it made; only what is read here.
type meta struct {
	Inputs  map[string]struct{} `json:"inputs"`
	Outputs map[string]struct {
		EntryPoint string `json:"entryPoint"`
		CSS        string `json:"cssBundle"`
	} `json:"outputs"`
}

func readMeta(text string) (meta, error) {
	var m meta
	if err := json.Unmarshal([]byte(text), &m); err != nil {
		return m, fmt.Errorf("reading what was made: %w", err)
	}
	return m, nil
}

// indexOf puts the names of the script and the style into the page that loads them.
func indexOf(template string, made meta) ([]byte, error) {
	for script, o := range made.Outputs {
		if o.EntryPoint != "ui/main.tsx" {
			continue
		}
		out := strings.NewReplacer("{{script}}", "/"+path.Base(script), "{{style}}", "/"+path.Base(o.CSS)).Replace(template)
		if strings.Contains(out, "{{") {
			return nil, errors.New("ui/index.html: only {{script}} and {{style}} are filled in")
		}
		return []byte(out), nil
	}
	return nil, errors.New("no script was made from ui/main.tsx")
}

package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
)

// licences gathers the licence texts of the packages that ended up in the scripts, by name.
func licences(dir string, made meta) ([]byte, error) {
	packages := map[string]bool{}
	for input := range made.Inputs {
		if name := packageOf(input); name != "" {
			packages[name] = true
		}
	}
	var out bytes.Buffer
	out.WriteString("The page contains the following software under its own licences.\n")
	for _, name := range slices.Sorted(maps.Keys(packages)) {
		folder := filepath.Join(dir, "node_modules", filepath.FromSlash(name))
		version, err := versionOf(folder)
		if err != nil {
			return nil, err
		}
		text, err := licenceOf(folder)
		if err != nil {
			return nil, err
		}
		fmt.Fprintf(&out, "\n%s\n%s %s\n\n%s\n", strings.Repeat("-", 72), name, version, bytes.TrimSpace(text))
	}
	return out.Bytes(), nil
}

// packageOf names the package that an input belongs to: node_modules/@a/b/c.js is of @a/b. It is empty for
// the page's own sources.
func packageOf(input string) string {
	_, inside, found := strings.Cut(input, "node_modules/")
	if !found {
		return ""
	}
	words := strings.Split(inside, "/")
	if strings.HasPrefix(words[0], "@") && len(words) > 1 {
		return words[0] + "/" + words[1]
	}
	return words[0]
}

func versionOf(folder string) (string, error) {
	text, err := os.ReadFile(filepath.Join(folder, "package.json"))
	if err != nil {
		return "", err
	}
	var p struct {
		Version string `json:"version"`
	}
	if err := json.Unmarshal(text, &p); err != nil {
		return "", fmt.Errorf("%s: package.json: %w", folder, err)
	}
	return p.Version, nil
}

func licenceOf(folder string) ([]byte, error) {
	for _, name := range []string{"LICENSE", "LICENSE.md", "LICENSE.txt"} {
		if text, err := os.ReadFile(filepath.Join(folder, name)); err == nil {
			return text, nil
		}
	}
	return nil, fmt.Errorf("%s: no licence text; what is bundled must come with one", folder)
}

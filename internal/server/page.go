package server

import (
	"crypto/sha256"
	"encoding/hex"
	"io/fs"
	"mime"
	"net/http"
	"path"
	"regexp"
	"strings"

	"rodwright/draw/svg"
	"rodwright/draw/typeface"
)

// asset is one file of the page.
type asset struct {
	bytes       []byte
	kind, etag  string
	everlasting bool // its name changes with its contents
}

// pages is the built page. All of its files are read once: nothing that is asked for later names a file.
type pages map[string]asset

// hashed names files by what is in them: app-ZP6G64HH.css.
var hashed = regexp.MustCompile(`-[A-Z0-9]{8}\.[a-z0-9]+$`)

// kinds are the media types of what a page is made of; the machine's own table may lack or change them.
var kinds = map[string]string{
	".html": "text/html; charset=utf-8", ".css": "text/css; charset=utf-8", ".js": "text/javascript; charset=utf-8",
	".svg": "image/svg+xml", ".txt": "text/plain; charset=utf-8", ".json": "application/json", ".ttf": "font/ttf",
	".woff2": "font/woff2", ".png": "image/png", ".webmanifest": "application/manifest+json",
}

const (
	index   = "index.html"
	forever = "public, max-age=31536000, immutable"
)

func newPage(files fs.FS) (pages, error) {
	p := pages{}
	if files == nil {
		return p, nil
	}
	err := fs.WalkDir(files, ".", func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		text, err := fs.ReadFile(files, name)
		p[name] = newAsset(name, text)
		return err
	})
	if icon, ok := p["icon.svg"]; ok { // browsers ask for it beside a page that names none, as the book does
		p["favicon.ico"] = icon
	}
	return p, err
}

func newAsset(name string, text []byte) asset {
	sum := sha256.Sum256(text)
	kind, ok := kinds[path.Ext(name)]
	if !ok {
		kind = mime.TypeByExtension(path.Ext(name))
	}
	if kind == "" {
		kind = "application/octet-stream"
	}
	return asset{text, kind, `"` + hex.EncodeToString(sum[:16]) + `"`, hashed.MatchString(name)}
}

// ServeHTTP answers with a file, and with the page itself for every path that looks like one of its own.
func (p pages) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	if r.Method != http.MethodGet && r.Method != http.MethodHead {
		w.Header().Set("Allow", "GET, HEAD")
		problem(http.StatusMethodNotAllowed, "the page is read only", "it is GET").write(w)
		return
	}
	name := strings.TrimPrefix(path.Clean("/"+r.URL.Path), "/")
	a, ok := p[name]
	if !ok && path.Ext(name) == "" {
		a, ok = p[index]
	}
	switch {
	case ok:
		a.serve(w, r)
	case path.Ext(name) == "":
		problem(http.StatusNotFound, "this program was built without its page", "build it with: make bundle build").write(w)
	default:
		problem(http.StatusNotFound, "there is no file "+quoted(r.URL.Path), "").write(w)
	}
}

func (a asset) serve(w http.ResponseWriter, r *http.Request) {
	h := w.Header()
	h.Set("Content-Type", a.kind)
	h.Set("ETag", a.etag)
	h.Set("Cache-Control", ask)
	if a.everlasting {
		h.Set("Cache-Control", forever)
	}
	if has(r.Header.Get("If-None-Match"), a.etag) {
		w.WriteHeader(http.StatusNotModified)
		return
	}
	if r.Method == http.MethodHead {
		return
	}
	w.Write(a.bytes) // whoever asked may be gone
}

// withDrawings serves, beside the page, the style of drawings and the type that they are lettered in.
func withDrawings(page http.Handler) http.Handler {
	own := pages{
		"drawing.css":        newAsset("drawing.css", []byte(svg.Style)),
		"fonts/regular.ttf":  newAsset("regular.ttf", typeface.Regular()),
		"fonts/semibold.ttf": newAsset("semibold.ttf", typeface.SemiBold()),
	}
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if r.URL.Path == "/drawing.css" || strings.HasPrefix(r.URL.Path, "/fonts/") {
			own.ServeHTTP(w, r)
			return
		}
		page.ServeHTTP(w, r)
	})
}

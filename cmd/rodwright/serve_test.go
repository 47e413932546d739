package main

import (
	"bufio"
	"encoding/json"
	"io"
	"net"
	"net/http"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"runtime"
	"slices"
	"strings"
	"syscall"
	"testing"

	"rodwright/internal/server"
)

// process is the program at work.
type process struct {
	*exec.Cmd
	out     *bufio.Reader
	errs    strings.Builder
	address string
}

// begin starts the program and waits for its address.
func begin(t *testing.T, words ...string) *process {
	t.Helper()
	if runtime.GOOS == "windows" {
		t.Fatal("this test ends a process by a signal, which this system has none of")
	}
	p := &process{Cmd: exec.Command("rodwright", words...)}
	p.Stderr = &p.errs
	out, err := p.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := p.Start(); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() {
		if p.ProcessState == nil {
			p.Process.Kill()
			p.Wait()
		}
	})
	p.out = bufio.NewReader(out)
	line, err := p.out.ReadString('\n')
	if err != nil {
		t.Fatalf("%v: %s", err, p.errs.String())
	}
	p.address = regexp.MustCompile(`^open (http://127\.0\.0\.1:[0-9]+)/ in a browser; Ctrl\+C ends\n$`).ReplaceAllString(line, "$1")
	if p.address == line {
		t.Fatalf("it says %q", line)
	}
	return p
}

// ends sends a signal and returns the exit code and what was said last.
func (p *process) ends(t *testing.T, s os.Signal) (code int, said string) {
	t.Helper()
	if err := p.Process.Signal(s); err != nil {
		t.Fatal(err)
	}
	rest, err := io.ReadAll(p.out)
	if err != nil {
		t.Fatal(err)
	}
	p.Wait() // the code says how it ended
	return p.ProcessState.ExitCode(), string(rest)
}

// pieces are the names of the pieces that are served.
func (p *process) pieces(t *testing.T) (names []string) {
	t.Helper()
	answer, err := http.Get(p.address + "/api/pieces")
	if err != nil {
		t.Fatal(err)
	}
	defer answer.Body.Close()
	var list struct{ Pieces []struct{ Name string } }
	if err := json.NewDecoder(answer.Body).Decode(&list); err != nil {
		t.Fatal(err)
	}
	for _, one := range list.Pieces {
		names = append(names, one.Name)
	}
	slices.Sort(names)
	return names
}

func TestTheDemonstrationServesItsPageAndStopsCleanly(t *testing.T) {
	dir := t.TempDir()
	all := []string{"low bench", "packing table", "packing table under way", "propagation rack", "stepped seedling stand", "wall shelf"}
	for _, s := range []os.Signal{os.Interrupt, syscall.SIGTERM} { // the second time the shop is there
		p := begin(t, "demo", "--port", "0", "--dir", dir, "--no-open")
		answer, err := http.Get(p.address + "/")
		if err != nil {
			t.Fatal(err)
		}
		page, err := io.ReadAll(answer.Body)
		answer.Body.Close()
		if err != nil || answer.StatusCode != http.StatusOK || !strings.Contains(string(page), "<!doctype html>") {
			t.Errorf("%d %v %.80s", answer.StatusCode, err, page)
		}
		if got := p.pieces(t); !slices.Equal(got, all) {
			t.Errorf("pieces %q", got)
		}
		listening, err := http.Get(p.address + "/api/events") // ended by the stop
		if err != nil {
			t.Fatal(err)
		}
		defer listening.Body.Close()
		if code, said := p.ends(t, s); code != exitDone || said != "stopped\n" {
			t.Errorf("after %v: exit %d, %q, %q", s, code, said, p.errs.String())
		}
	}
}

func TestAShopIsServedWithThePiecesItIsGiven(t *testing.T) {
	dir := t.TempDir()
	file := filepath.Join(dir, "shop.db")
	p := begin(t, "serve", "--shop", file, "--port", "0", "../../examples/low-bench.piece.yaml")
	if got := p.pieces(t); !slices.Equal(got, []string{"low bench"}) {
		t.Errorf("pieces %q", got)
	}
	if code, _ := p.ends(t, os.Interrupt); code != exitDone || !strings.Contains(p.errs.String(), "made a new shop in "+file) {
		t.Errorf("exit %d, %q", code, p.errs.String())
	}
	p = begin(t, "serve", "--shop", file, "--port", "0", "../../examples/low-bench.piece.yaml", "../../examples/wall-shelf.piece.yaml")
	if got := p.pieces(t); !slices.Equal(got, []string{"low bench", "wall shelf"}) {
		t.Errorf("pieces %q", got)
	}
	if code, _ := p.ends(t, os.Interrupt); code != exitDone {
		t.Errorf("exit %d, %q", code, p.errs.String())
	}
}

func TestFreshBeginsAnew(t *testing.T) {
	v := demoVerb{Dir: t.TempDir(), Fresh: true}
	for _, name := range []string{"demo.db", "demo.db-wal", "demo.db-shm", "other.db"} {
		if err := os.WriteFile(filepath.Join(v.Dir, name), nil, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	file, err := v.file()
	if err != nil || file != filepath.Join(v.Dir, "demo.db") {
		t.Fatalf("%s, %v", file, err)
	}
	left, err := os.ReadDir(v.Dir)
	if err != nil || len(left) != 1 || left[0].Name() != "other.db" {
		t.Errorf("left: %v, %v", left, err)
	}
}

func TestAPortInUseIsToldWithWhatToDo(t *testing.T) {
	l, err := server.Listen(0)
	if err != nil {
		t.Fatal(err)
	}
	defer l.Close()
	_, port, err := net.SplitHostPort(l.Addr().String())
	if err != nil {
		t.Fatal(err)
	}
	for _, verb := range [][]string{{"demo", "--dir", t.TempDir(), "--no-open"}, {"serve", "--shop", filepath.Join(t.TempDir(), "shop.db")}} {
		code, out, errs := run("", append(verb, "--port", port)...)
		if code != exitOther || out != "" || !strings.Contains(errs, "port "+port) || !strings.Contains(errs, "--port N") {
			t.Errorf("%s: exit %d, %q, %q", verb[0], code, out, errs)
		}
	}
}

func TestWhatCannotBeServedIsWrongInput(t *testing.T) {
	dir := t.TempDir()
	foreign, wrong := filepath.Join(dir, "letter.txt"), filepath.Join(dir, "wrong.piece.yaml")
	for file, text := range map[string]string{foreign: strings.Repeat("Dear all. ", 200), wrong: "rodwright: 1\npiece: [\n"} {
		if err := os.WriteFile(file, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	for _, c := range []struct {
		says, want string
		words      []string
	}{
		{"no shop is named", "--shop", nil},
		{"a file that is no shop", "is no shop of this program", []string{"--shop", foreign}},
		{"a port that is none", "0 for any that is free", []string{"--shop", filepath.Join(dir, "a.db"), "--port", "70000"}},
		{"a piece that can't be read", "wrong.piece.yaml:", []string{"--shop", filepath.Join(dir, "b.db"), wrong}},
		{"a piece that is not there", "there is no such file", []string{"--shop", filepath.Join(dir, "c.db"), filepath.Join(dir, "none.piece.yaml")}},
	} {
		words := append([]string{"serve"}, c.words...)
		if !slices.Contains(words, "--port") {
			words = append(words, "--port", "0")
		}
		if code, out, errs := run("", words...); code != exitInput || out != "" || !strings.Contains(errs, c.want) {
			t.Errorf("%s: exit %d, %q, %q", c.says, code, out, errs)
		}
	}
	if text, err := os.ReadFile(foreign); err != nil || !strings.HasPrefix(string(text), "Dear all") {
		t.Error("the foreign file was changed")
	}
}

func TestABrowserIsOpenedOnlyOnADesktop(t *testing.T) {
	with := func(pairs ...string) func(string) string {
		return func(name string) string {
			if i := slices.Index(pairs, name); i >= 0 {
				return pairs[i+1]
			}
			return ""
		}
	}
	for _, c := range []struct {
		system string
		env    func(string) string
		want   string
	}{
		{"linux", with(), ""},
		{"linux", with("DISPLAY", ":0"), "xdg-open"},
		{"freebsd", with("WAYLAND_DISPLAY", "wayland-0"), "xdg-open"},
		{"darwin", with(), "open"},
		{"windows", with(), "rundll32"},
	} {
		words := browser(c.system, c.env)
		if got := strings.Join(append(words, ""), " "); !strings.HasPrefix(got, c.want) || (words == nil) != (c.want == "") {
			t.Errorf("%s: %q", c.system, words)
		}
	}
	null, err := os.Open(os.DevNull)
	if err != nil {
		t.Fatal(err)
	}
	defer null.Close()
	file, err := os.CreateTemp(t.TempDir(), "out")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	for _, w := range []any{null, file, &strings.Builder{}} {
		if terminal(w) {
			t.Errorf("%T is taken for a terminal", w)
		}
	}
}

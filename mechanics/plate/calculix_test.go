package plate

import (
	"bufio"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
)

// notched is a rectangle with a notch in its front edge on four posts that hold it down too.
func notched(m Material) *Plate {
	p := &Plate{Width: 600, Depth: 400, Thickness: 6, Material: m, Load: Load{Pressure: 1e-3}}
	p.Openings = []Rect{{220, 0, 160, 120}}
	for _, x := range []float64{40, 560} {
		for _, y := range []float64{40, 360} {
			p.Posts = append(p.Posts, Post{X: x, Y: y, TwoSided: true})
		}
	}
	return p
}

// The same plates are worked out by CalculiX (G. Dhondt, K. Wittig), a finite element program of others, with
// quadratic shells of its type S8R, which it turns into solids: another theory, mesh and element.
func TestNotchedPlatesSagAsByCalculiX(t *testing.T) {
	if _, err := exec.LookPath("ccx"); err != nil {
		t.Fatal("ccx (CalculiX) is missing: run `make tools`")
	}
	for name, m := range map[string]Material{"even": Even(10_000, 0.3), "wood": wood} {
		p := notched(m)
		moved := calculix(t, p, 20)
		r := solved(t, p)
		for _, place := range [][2]float64{{300, 200}, {300, 400}, {220, 120}, {0, 200}, {0, 0}} {
			got, ok := r.Field.At(place[0], place[1])
			want, found := moved[place]
			if !ok || !found {
				t.Fatalf("%s: no wood at %v", name, place)
			}
			// Places that hardly move are compared with the largest sag.
			if math.Abs(want) > r.Sag.Value/10 {
				within(t, fmt.Sprintf("%s at %v", name, place), got, want, 0.02)
			} else if math.Abs(got-want) > 0.02*r.Sag.Value {
				t.Errorf("%s at %v: %v, CalculiX %v", name, place, got, want)
			}
		}
		deepest := math.Inf(-1)
		for _, w := range moved {
			deepest = max(deepest, w)
		}
		within(t, name+": largest sag", r.Sag.Value, deepest, 0.02)
	}
}

// calculix returns the sag of every node of a mesh of square shells of the given size.
func calculix(t *testing.T, p *Plate, size float64) map[[2]float64]float64 {
	t.Helper()
	dir := t.TempDir()
	deck, places := deckOf(p, size)
	if err := os.WriteFile(filepath.Join(dir, "plate.inp"), []byte(deck), 0o600); err != nil {
		t.Fatal(err)
	}
	run := exec.Command("ccx", "plate")
	run.Dir = dir
	if out, err := run.CombinedOutput(); err != nil {
		t.Fatalf("ccx: %v\n%s", err, out)
	}
	file, err := os.Open(filepath.Join(dir, "plate.dat"))
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	moved := map[[2]float64]float64{}
	for lines := bufio.NewScanner(file); lines.Scan(); {
		f := strings.Fields(lines.Text())
		if len(f) != 4 {
			continue
		}
		if node, err := strconv.Atoi(f[0]); err == nil {
			w, err := strconv.ParseFloat(f[3], 64)
			if err != nil {
				t.Fatal(err)
			}
			moved[places[node]] = -w // z points up
		}
	}
	if len(moved) == 0 {
		t.Fatal("ccx has printed no displacements")
	}
	return moved
}

// deckOf writes the plate as input of CalculiX and returns where its nodes stand. All sizes are whole numbers
// of shells.
func deckOf(p *Plate, size float64) (deck string, places map[int][2]float64) {
	var nodes, shells, b strings.Builder
	across := 2*int(p.Width/size) + 1
	number := func(i, j int) int { return 1 + i + j*across } // by half shells
	places = map[int][2]float64{}
	o := p.Openings[0]
	for e, i := 1, 0; i < across-1; i += 2 {
		for j := 0; j < 2*int(p.Depth/size); j += 2 {
			x, y := float64(i+1)*size/2, float64(j+1)*size/2
			if x > o.X && x < o.X+o.W && y > o.Y && y < o.Y+o.H {
				continue
			}
			fmt.Fprintf(&shells, "%d", e)
			e++
			for _, d := range [][2]int{{0, 0}, {2, 0}, {2, 2}, {0, 2}, {1, 0}, {2, 1}, {1, 2}, {0, 1}} {
				n := number(i+d[0], j+d[1])
				if _, seen := places[n]; !seen {
					places[n] = [2]float64{float64(i+d[0]) * size / 2, float64(j+d[1]) * size / 2}
					fmt.Fprintf(&nodes, "%d, %g, %g, 0\n", n, places[n][0], places[n][1])
				}
				fmt.Fprintf(&shells, ", %d", n)
			}
			shells.WriteByte('\n')
		}
	}
	m := p.Material
	fmt.Fprintf(&b, "*NODE, NSET=ALL\n%s*ELEMENT, TYPE=S8R, ELSET=PLATE\n%s*MATERIAL, NAME=M\n", nodes.String(), shells.String())
	// Across the thickness the plate is like across the grain; it hardly matters in bending.
	fmt.Fprintf(&b, "*ELASTIC, TYPE=ENGINEERING CONSTANTS\n%g, %g, %g, %g, %g, 0.3, %g, %g,\n%g\n", m.EL, m.ET, m.ET, m.NuLT, m.NuLT, m.GLT, m.GLT, m.GLT)
	fmt.Fprintf(&b, "*SHELL SECTION, MATERIAL=M, ELSET=PLATE\n%g\n*BOUNDARY\n", p.Thickness)
	for k, s := range p.Posts {
		n := number(int(2*s.X/size), int(2*s.Y/size))
		fmt.Fprintf(&b, "%d, 3, 3\n", n)
		// Two of them keep it from sliding and turning in its own plane.
		switch k {
		case 0:
			fmt.Fprintf(&b, "%d, 1, 2\n", n)
		case 1:
			fmt.Fprintf(&b, "%d, 1, 1\n", n)
		}
	}
	fmt.Fprintf(&b, "*STEP\n*STATIC\n*DLOAD\nPLATE, P, %g\n*NODE PRINT, NSET=ALL\nU\n*END STEP\n", -p.Load.Pressure)
	return b.String(), places
}

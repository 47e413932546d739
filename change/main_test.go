package change_test

import (
	"flag"
	"os"
	"testing"
)

// usualChecks is how many stories each law is held on, where no other number is asked for: one takes many derivations.
const usualChecks = "60"

func TestMain(m *testing.M) {
	flag.Parse()
	if f := flag.Lookup("rapid.checks"); f != nil && f.Value.String() == f.DefValue {
		if err := flag.Set("rapid.checks", usualChecks); err != nil {
			panic(err)
		}
	}
	os.Exit(m.Run())
}

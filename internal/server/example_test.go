package server_test

import (
	"fmt"
	"net/http/httptest"

	"rodwright/internal/server"
)

// A request that came here by another site's name is refused, whatever it asks for.
func ExampleNew() {
	s, err := server.New(server.Options{Version: "1.0.0"})
	if err != nil {
		fmt.Println(err)
		return
	}
	defer s.Close()
	r := httptest.NewRequest("GET", "/api/pieces", nil)
	r.Host = "elsewhere.example"
	w := httptest.NewRecorder()
	s.ServeHTTP(w, r)
	fmt.Println(w.Code, w.Header().Get("Content-Type"))
	// Output:
	// 403 application/problem+json
}

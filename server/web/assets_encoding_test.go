package web

import "testing"

func TestChooseEncoding(t *testing.T) {
	all := map[string][]byte{"identity": nil, "br": nil, "gzip": nil}
	for _, test := range []struct {
		header string
		have   map[string][]byte
		want   string
	}{
		{"", all, "identity"},
		{"br", all, "br"},
		{"gzip", all, "gzip"},
		{"x-gzip", all, "gzip"},
		{"gzip, deflate, br, zstd", all, "br"},
		{"GZIP , Br", all, "br"},
		{"br;q=0", all, "identity"},
		{"br;q=0.0, gzip", all, "gzip"},
		{"br;q=0.5, gzip;q=0.8", all, "gzip"},
		{"br;q=0.8, gzip;q=0.8", all, "br"},
		{"br; q=0.001", all, "br"},
		{"br;Q=1.000", all, "br"},
		{"*", all, "br"},
		{"*;q=0", all, "identity"},
		{"*;q=0, gzip;q=0.1", all, "gzip"},
		{"br;q=0, *", all, "gzip"},
		{"identity", all, "identity"},
		{"identity;q=0.5, br;q=0.2", all, "identity"},
		{"identity;q=0, br;q=0.2", all, "br"},
		{"identity;q=0", all, "identity"}, // nothing is left: the plain bytes are better than none
		{"br;q=2", all, "identity"},
		{"br;q=-1", all, "identity"},
		{"br;q=NaN", all, "identity"},
		{"br;q=", all, "identity"},
		{"br;q=x, gzip", all, "gzip"},
		{"br;level=11;q=0", all, "identity"},
		{"abr, brx", all, "identity"},
		{";q=1,,;", all, "identity"},
		{"br, gzip", map[string][]byte{"identity": nil}, "identity"},
		{"br, gzip;q=0.1", map[string][]byte{"identity": nil, "gzip": nil}, "gzip"},
	} {
		if got := chooseEncoding(test.header, asset{variants: test.have}.has); got != test.want {
			t.Errorf("Accept-Encoding %q of %d variants: %s, want %s", test.header, len(test.have), got, test.want)
		}
	}
}

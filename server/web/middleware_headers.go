package web

import (
	"net/http"
	"strings"
)

// A worker does not inherit its page's policy, so the same one goes out with every response.
const pagePolicy = "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self'; img-src 'self' blob: data:; " +
	"connect-src 'self'; manifest-src 'self'; worker-src 'self'; base-uri 'none'; form-action 'none'; " + frameRule +
	"require-trusted-types-for 'script'; trusted-types rimside"

const frameRule = "frame-ancestors 'none'; "

// MetaPolicy is the content security policy for pages on a host whose headers are not ours. A page's meta element
// cannot say who may frame it, so that rule is left out.
func MetaPolicy() string {
	return strings.Replace(pagePolicy, frameRule, "", 1)
}

const permissions = "geolocation=(self), accelerometer=(self), gyroscope=(self), camera=(self), microphone=(self), magnetometer=(), " +
	"usb=(), serial=(), hid=(), midi=(), payment=(), display-capture=(), idle-detection=(), " +
	"screen-wake-lock=(self), publickey-credentials-get=(), xr-spatial-tracking=()"

var everywhere = map[string]string{
	"Content-Security-Policy":      pagePolicy,
	"X-Content-Type-Options":       "nosniff",
	"Referrer-Policy":              "no-referrer",
	"Permissions-Policy":           permissions,
	"Cross-Origin-Opener-Policy":   "same-origin",
	"Cross-Origin-Resource-Policy": "same-origin",
}

// withHeaders puts the protecting headers on whatever next answers.
func withHeaders(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		for name, value := range everywhere {
			w.Header()[name] = []string{value}
		}
		next.ServeHTTP(w, r)
	})
}

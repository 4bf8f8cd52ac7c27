package org.scrubline.doors;

import java.util.concurrent.atomic.AtomicReference;
import no.nav.security.mock.oauth2.http.OAuth2HttpRequest;
import no.nav.security.mock.oauth2.http.OAuth2HttpResponse;
import no.nav.security.mock.oauth2.http.Route;
import okhttp3.Headers;

/** Answers the next request for a token with what a test hands it, in place of the provider's own. */
final class HandedToken implements Route {

    private static final int OK = 200;
    private static final AtomicReference<String> NEXT = new AtomicReference<>();

    static void next(String body) {
        NEXT.set(body);
    }

    @Override
    public boolean match(OAuth2HttpRequest request) {
        return NEXT.get() != null && request.getUrl().encodedPath().endsWith("/token");
    }

    @Override
    public OAuth2HttpResponse invoke(OAuth2HttpRequest request) {
        return new OAuth2HttpResponse(Headers.of("Content-Type", "application/json"), OK, NEXT.getAndSet(null), null);
    }
}

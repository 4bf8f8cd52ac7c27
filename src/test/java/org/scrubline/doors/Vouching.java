package org.scrubline.doors;

import com.nimbusds.oauth2.sdk.AuthorizationCodeGrant;
import com.nimbusds.oauth2.sdk.TokenRequest;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import no.nav.security.mock.oauth2.token.OAuth2TokenCallback;

/** What one issuer says in the token of each code, so that a code nobody comes back with shifts nothing. */
final class Vouching implements OAuth2TokenCallback {

    private static final Map<String, Vouched> BY_CODE = new ConcurrentHashMap<>();

    private final String issuer;

    Vouching(String issuer) {
        this.issuer = issuer;
    }

    /** Somebody and what else the provider says of them. */
    private record Vouched(String subject, Map<String, Object> claims) {}

    static void remember(String code, String subject, Map<String, ?> claims) {
        BY_CODE.put(code, new Vouched(subject, Map.copyOf(claims)));
    }

    private static Vouched of(TokenRequest request) {
        String code = request.getAuthorizationGrant() instanceof AuthorizationCodeGrant grant
                ? grant.getAuthorizationCode().getValue()
                : "";
        return BY_CODE.getOrDefault(code, new Vouched("somebody", Map.of()));
    }

    @Override
    public String issuerId() {
        return issuer;
    }

    @Override
    public String subject(TokenRequest request) {
        return of(request).subject();
    }

    @Override
    public String typeHeader(TokenRequest request) {
        return "JWT";
    }

    @Override
    public List<String> audience(TokenRequest request) {
        return List.of(RunningProvider.CLIENT);
    }

    @Override
    public Map<String, Object> addClaims(TokenRequest request) {
        return of(request).claims();
    }

    @Override
    public long tokenExpiry() {
        return 300;
    }
}

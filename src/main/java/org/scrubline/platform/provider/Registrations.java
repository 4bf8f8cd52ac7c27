package org.scrubline.platform.provider;

import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.scrubline.platform.provider.ProviderFault.Reason;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.security.oauth2.client.registration.ClientRegistration;
import org.springframework.security.oauth2.client.registration.ClientRegistrations;
import org.springframework.stereotype.Component;

/**
 * What each provider says of itself (OpenID Connect Discovery 1.0). Asked when it is first needed: a provider that is down
 * keeps this server from nothing.
 */
@Component
class Registrations {

    /** Where a provider leads back to, followed by the name of the connection. */
    static final String BACK = "/login/from/";

    private final Map<String, ClientRegistration> known = new ConcurrentHashMap<>();
    private final String address;

    Registrations(@Value("${scrubline.web.origin}") String address) {
        this.address = address.strip().replaceFirst("/+$", "");
    }

    ClientRegistration of(Connection connection) {
        ClientRegistration before = known.get(connection.name());
        if (before != null) {
            return before;
        }
        ClientRegistration fresh = discover(connection);
        known.put(connection.name(), fresh);
        return fresh;
    }

    /** The address to come back to is this server's own, whatever the request calls it. */
    private ClientRegistration discover(Connection connection) {
        try {
            return ClientRegistrations.fromOidcIssuerLocation(connection.issuer())
                    .registrationId(connection.name())
                    .clientId(connection.clientId())
                    .clientSecret(connection.clientSecret())
                    .redirectUri(address + BACK + connection.name())
                    .scope("openid")
                    .build();
        } catch (IllegalArgumentException | IllegalStateException e) {
            throw new ProviderFault(Reason.UNREACHABLE, e);
        }
    }
}

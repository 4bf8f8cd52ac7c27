package org.scrubline.platform.passkey;

import com.webauthn4j.data.client.Origin;
import com.webauthn4j.data.client.challenge.DefaultChallenge;
import com.webauthn4j.server.ServerProperty;
import java.net.URI;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.stereotype.Component;

/** The address people open this server at. Passkeys belong to its host and answer from nowhere else. */
@Component
class RelyingParty {

    private final Origin origin;
    private final String id;

    RelyingParty(@Value("${scrubline.web.origin}") String address, @Value("${scrubline.web.rp-id:}") String id) {
        this.origin = origin(address);
        this.id = id.isBlank() ? String.valueOf(origin.getHost()) : id.strip();
    }

    String origin() {
        return origin.toString();
    }

    String id() {
        return id;
    }

    ServerProperty expecting(byte[] challenge) {
        return ServerProperty.builder()
                .origin(origin)
                .rpId(id)
                .challenge(new DefaultChallenge(challenge))
                .build();
    }

    /** As browsers write it: without a path, and without the port the scheme has anyway. */
    private static Origin origin(String address) {
        URI uri = URI.create(address.strip());
        boolean web = "http".equals(uri.getScheme()) || "https".equals(uri.getScheme());
        if (!web || uri.getHost() == null) {
            throw new IllegalStateException(
                    "scrubline.web.origin must be an address like https://scrubline.example.org, not " + address);
        }
        boolean usual = uri.getPort() == ("https".equals(uri.getScheme()) ? 443 : 80);
        String port = usual || uri.getPort() == -1 ? "" : ":" + uri.getPort();
        return new Origin(uri.getScheme() + "://" + uri.getHost() + port);
    }
}

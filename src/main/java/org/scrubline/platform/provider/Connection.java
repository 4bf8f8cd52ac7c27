package org.scrubline.platform.provider;

import java.util.Set;
import java.util.UUID;

/**
 * How the people of one organisation log in through its identity provider.
 *
 * @param name stands in addresses
 * @param organisation the one entered
 * @param label what its people call that log-in
 * @param issuer the provider, exactly as its tokens name it
 * @param secondFactor values of {@code amr} or {@code acr} by which the provider says that it saw two factors; empty when
 *     its word does not count
 * @param provisioned whether the directory's own name for a person is the provider's subject
 */
public record Connection(
        String name,
        UUID organisation,
        String label,
        String issuer,
        String clientId,
        String clientSecret,
        Set<String> secondFactor,
        boolean provisioned) {

    public Connection {
        secondFactor = Set.copyOf(secondFactor);
    }

    /** Keeps the secret out of any log. */
    @Override
    public String toString() {
        return "Connection[" + name + "]";
    }
}

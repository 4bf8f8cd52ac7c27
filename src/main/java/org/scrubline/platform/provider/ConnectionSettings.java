package org.scrubline.platform.provider;

import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.boot.context.properties.ConfigurationProperties;
import org.springframework.boot.context.properties.bind.DefaultValue;

/** The connections as the operator wrote them, by the name that stands in their addresses. */
@ConfigurationProperties("scrubline.single-sign-on")
record ConnectionSettings(@DefaultValue Map<String, Given> connections) {

    /** One of them; what is missing is empty. */
    record Given(
            @Nullable UUID organisation,
            @DefaultValue("") String label,
            @DefaultValue("") String issuer,
            @DefaultValue("") String clientId,
            @DefaultValue("") String clientSecret,
            @DefaultValue Set<String> secondFactor,
            @DefaultValue("false") boolean provisioned) {

        /** Keeps the secret out of any log. */
        @Override
        public String toString() {
            return "Given[" + label + "]";
        }
    }
}

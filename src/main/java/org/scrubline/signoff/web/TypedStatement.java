package org.scrubline.signoff.web;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.scrubline.platform.Credential;
import org.scrubline.signoff.Intent;
import org.scrubline.signoff.Versions.Signature;
import org.springframework.util.LinkedMultiValueMap;
import org.springframework.util.MultiValueMap;

/** What was typed into a {@link StatementForm}, right or wrong. */
record TypedStatement(MultiValueMap<String, String> values) {

    private static final Set<String> CREDENTIAL = Set.of("password", "assertion");

    static TypedStatement none() {
        return new TypedStatement(new LinkedMultiValueMap<>());
    }

    static TypedStatement reason(String text) {
        MultiValueMap<String, String> values = new LinkedMultiValueMap<>();
        values.add("reason", text);
        return new TypedStatement(values);
    }

    String text(String field) {
        String value = values.getFirst(field);
        return value == null ? "" : value;
    }

    List<String> all(String field) {
        return values.getOrDefault(field, List.of());
    }

    /** Empty for what is no id. */
    Optional<UUID> id(String field) {
        try {
            return Optional.of(UUID.fromString(text(field)));
        } catch (IllegalArgumentException noId) {
            return Optional.empty();
        }
    }

    Signature signature() {
        return new Signature(
                text("reason"),
                Credential.of(text("password"), text("assertion")),
                TypedIntent.of(values).map(Intent::hash).orElse(""));
    }

    /** Everything but the credential, to be shown again. */
    Map<String, String> shown() {
        return values.toSingleValueMap().entrySet().stream()
                .filter(entry -> !CREDENTIAL.contains(entry.getKey()))
                .collect(Collectors.toMap(Map.Entry::getKey, Map.Entry::getValue));
    }
}

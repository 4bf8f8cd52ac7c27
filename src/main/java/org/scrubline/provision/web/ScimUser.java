package org.scrubline.provision.web;

import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.scrubline.provision.ProvisionedUser;
import org.scrubline.provision.Wanted;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

/**
 * A person as a resource of type User (RFC 7643, section 4.1): as much of it as is kept here. Other attributes are taken and
 * dropped, as section 3.3 of RFC 7644 allows. Names of attributes are compared without case.
 */
final class ScimUser {

    static final String SCHEMA = "urn:ietf:params:scim:schemas:core:2.0:User";

    private ScimUser() {}

    static ObjectNode of(ProvisionedUser user, String base) {
        ObjectNode body = ScimJson.object();
        body.set("schemas", ScimJson.texts(SCHEMA));
        body.put("id", user.id().toString());
        if (user.externalId() != null) {
            body.put("externalId", user.externalId());
        }
        body.put("userName", user.username());
        body.put("displayName", user.printedName());
        body.putObject("name").put("formatted", user.printedName());
        body.put("active", user.active());
        body.putObject("meta")
                .put("resourceType", "User")
                .put("created", user.createdAt().toString())
                .put("lastModified", user.changedAt().toString())
                .put("location", base + "/Users/" + user.id());
        return body;
    }

    /** What a body for a new person, or for one to be replaced, says. */
    static Wanted wanted(JsonNode body) {
        Map<String, JsonNode> said = members(body);
        return new Wanted(
                text(said, "username"), printedName(said), text(said, "externalid"), truth(said.get("active")));
    }

    /** Where a person is replaced, what is missing is taken away (RFC 7644, section 3.5.1). */
    static Wanted replaced(JsonNode body) {
        Wanted wanted = wanted(body);
        if (wanted.username().isEmpty()) {
            throw ScimError.invalid("invalidValue", "userName is required.");
        }
        return new Wanted(
                wanted.username(),
                wanted.printedName(),
                Optional.of(wanted.externalId().orElse("")),
                Optional.of(wanted.active().orElse(true)));
    }

    private static Optional<String> printedName(Map<String, JsonNode> said) {
        Map<String, JsonNode> name = members(said.getOrDefault("name", ScimJson.object()));
        Optional<String> parts = Optional.of(Stream.of("givenname", "familyname")
                        .flatMap(part -> text(name, part).stream())
                        .collect(Collectors.joining(" ")))
                .filter(both -> !both.isBlank());
        return text(said, "displayname").or(() -> text(name, "formatted")).or(() -> parts);
    }

    static Map<String, JsonNode> members(JsonNode object) {
        return object.properties().stream()
                .collect(Collectors.toMap(
                        member -> member.getKey().toLowerCase(Locale.ROOT),
                        Map.Entry::getValue,
                        (one, other) -> other));
    }

    private static Optional<String> text(Map<String, JsonNode> said, String name) {
        JsonNode value = said.get(name);
        if (value == null || value.isNull()) {
            return Optional.empty();
        }
        if (!value.isString()) {
            throw ScimError.invalid("invalidValue", name + " is a text.");
        }
        return Optional.of(value.stringValue());
    }

    /** Some directories write truth as a text. */
    static Optional<Boolean> truth(@Nullable JsonNode value) {
        if (value == null || value.isNull()) {
            return Optional.empty();
        }
        String said = value.asString("").toLowerCase(Locale.ROOT);
        if (!said.equals("true") && !said.equals("false")) {
            throw ScimError.invalid("invalidValue", "active is true or false.");
        }
        return Optional.of(said.equals("true"));
    }
}

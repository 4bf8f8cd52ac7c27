package org.scrubline.provision.web;

import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.scrubline.provision.Wanted;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

/** What a PATCH asks for (RFC 7644, section 3.5.2), all its operations together. */
final class ScimPatch {

    static final String SCHEMA = "urn:ietf:params:scim:api:messages:2.0:PatchOp";

    private static final int MOST_OPERATIONS = 100;
    private static final Set<String> PATHS =
            Set.of("username", "displayname", "name.formatted", "externalid", "active");

    private ScimPatch() {}

    static Wanted wanted(ObjectNode body) {
        JsonNode operations = ScimUser.members(body).get("operations");
        if (operations == null || !operations.isArray() || operations.isEmpty()) {
            throw ScimError.invalid("invalidSyntax", "Operations is a list with at least one operation.");
        }
        if (operations.size() > MOST_OPERATIONS) {
            throw new ScimError(413, "tooMany", "At most " + MOST_OPERATIONS + " operations at once.");
        }
        ObjectNode said = ScimJson.object();
        operations.forEach(operation -> apply(ScimUser.members(operation), said));
        return ScimUser.wanted(said);
    }

    private static void apply(Map<String, JsonNode> operation, ObjectNode said) {
        String op = word(operation.get("op"));
        String path =
                word(operation.get("path")).replaceFirst("^" + ScimUser.SCHEMA.toLowerCase(Locale.ROOT) + ":", "");
        JsonNode value = operation.get("value");
        switch (op) {
            case "add", "replace" -> set(path, value, said);
            case "remove" -> remove(path, said);
            default -> throw ScimError.invalid("invalidSyntax", "op is add, replace or remove.");
        }
    }

    private static void set(String path, @Nullable JsonNode value, ObjectNode said) {
        if (value == null) {
            throw ScimError.invalid("invalidValue", "The operation has no value.");
        }
        if (path.isEmpty() && value.isObject()) {
            ScimUser.members(value).forEach(said::set);
        } else if (PATHS.contains(path)) {
            said.set(path.equals("name.formatted") ? "displayname" : path, value);
        } else {
            throw ScimError.invalid("invalidPath", "This path is not kept here.");
        }
    }

    private static void remove(String path, ObjectNode said) {
        if (path.isEmpty()) {
            throw ScimError.invalid("noTarget", "remove needs a path.");
        }
        if (!PATHS.contains(path)) {
            throw ScimError.invalid("invalidPath", "This path is not kept here.");
        }
        if (!path.equals("externalid")) {
            throw ScimError.invalid("mutability", "This attribute cannot be removed.");
        }
        said.put(path, "");
    }

    private static String word(@Nullable JsonNode value) {
        return Optional.ofNullable(value)
                .filter(JsonNode::isString)
                .map(text -> text.stringValue().strip().toLowerCase(Locale.ROOT))
                .orElse("");
    }
}

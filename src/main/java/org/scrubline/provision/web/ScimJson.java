package org.scrubline.provision.web;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.List;
import java.util.stream.Stream;
import org.scrubline.platform.BodyJson;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** Bodies of SCIM messages. */
final class ScimJson {

    static final MediaType TYPE = MediaType.parseMediaType("application/scim+json;charset=UTF-8");
    static final String ERROR = "urn:ietf:params:scim:api:messages:2.0:Error";
    static final String LIST = "urn:ietf:params:scim:api:messages:2.0:ListResponse";

    /** Longest body in bytes; a person takes some hundred. */
    private static final int LONGEST = 64 * 1024;

    private static final JsonMapper MAPPER = JsonMapper.builder().build();

    private ScimJson() {}

    static ObjectNode object() {
        return MAPPER.createObjectNode();
    }

    static ArrayNode texts(String... texts) {
        ArrayNode array = MAPPER.createArrayNode();
        Stream.of(texts).forEach(array::add);
        return array;
    }

    /** A body that is one object. */
    static ObjectNode read(InputStream body) throws IOException {
        byte[] bytes = body.readNBytes(LONGEST + 1);
        if (bytes.length > LONGEST) {
            throw new ScimError(413, null, "A request has at most " + LONGEST + " bytes.");
        }
        JsonNode root = BodyJson.read(new ByteArrayInputStream(bytes), LONGEST)
                .orElseThrow(() -> ScimError.invalid("invalidSyntax", "The body is not JSON this server reads."));
        if (root instanceof ObjectNode object) {
            return object;
        }
        throw ScimError.invalid("invalidSyntax", "The body is one JSON object.");
    }

    static ObjectNode list(int total, int startIndex, List<? extends JsonNode> resources) {
        ObjectNode list = object();
        list.set("schemas", texts(LIST));
        list.put("totalResults", total);
        list.put("startIndex", startIndex);
        list.put("itemsPerPage", resources.size());
        ArrayNode array = list.putArray("Resources");
        resources.forEach(array::add);
        return list;
    }

    static ObjectNode error(ScimError error) {
        ObjectNode body = object();
        body.set("schemas", texts(ERROR));
        body.put("status", String.valueOf(error.status()));
        if (error.scimType() != null) {
            body.put("scimType", error.scimType());
        }
        body.put("detail", error.getMessage());
        return body;
    }

    static ResponseEntity<String> answer(ObjectNode body) {
        return ResponseEntity.ok().contentType(TYPE).body(body.toString());
    }

    static ResponseEntity<String> refusal(ScimError error) {
        return ResponseEntity.status(error.status())
                .contentType(TYPE)
                .body(error(error).toString());
    }
}

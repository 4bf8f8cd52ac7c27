package org.scrubline.provision.web;

import java.util.List;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** What this server can do for a directory (RFC 7643, sections 5 to 7; RFC 7644, section 4). */
@RestController
@RequestMapping(ScimEntrance.BASE)
class ScimDiscoveryController {

    private static final String CORE = "urn:ietf:params:scim:schemas:core:2.0:";

    private final String base;

    ScimDiscoveryController(@Value("${scrubline.web.origin}") String origin) {
        this.base = origin.strip().replaceFirst("/+$", "") + ScimEntrance.BASE;
    }

    @GetMapping("/ServiceProviderConfig")
    ResponseEntity<String> configuration() {
        ObjectNode body = ScimJson.object();
        body.set("schemas", ScimJson.texts(CORE + "ServiceProviderConfig"));
        body.putObject("patch").put("supported", true);
        body.putObject("bulk").put("supported", false).put("maxOperations", 0).put("maxPayloadSize", 0);
        body.putObject("filter").put("supported", true).put("maxResults", ScimUsersController.MOST);
        body.putObject("changePassword").put("supported", false);
        body.putObject("sort").put("supported", false);
        body.putObject("etag").put("supported", false);
        body.putArray("authenticationSchemes")
                .addObject()
                .put("type", "oauthbearertoken")
                .put("name", "Bearer token")
                .put("description", "A token an administrator of the programme makes (RFC 6750).")
                .put("primary", true);
        meta(body, "ServiceProviderConfig", "/ServiceProviderConfig");
        return ScimJson.answer(body);
    }

    @GetMapping("/ResourceTypes")
    ResponseEntity<String> types() {
        return ScimJson.answer(ScimJson.list(1, 1, List.of(userType())));
    }

    @GetMapping("/ResourceTypes/{name}")
    ResponseEntity<String> type(@PathVariable String name) {
        if (!name.equals("User")) {
            throw ScimError.unknown();
        }
        return ScimJson.answer(userType());
    }

    @GetMapping("/Schemas")
    ResponseEntity<String> schemas() {
        return ScimJson.answer(ScimJson.list(1, 1, List.of(userSchema())));
    }

    @GetMapping("/Schemas/{name}")
    ResponseEntity<String> schema(@PathVariable String name) {
        if (!name.equals(ScimUser.SCHEMA)) {
            throw ScimError.unknown();
        }
        return ScimJson.answer(userSchema());
    }

    private ObjectNode userType() {
        ObjectNode body = ScimJson.object();
        body.set("schemas", ScimJson.texts(CORE + "ResourceType"));
        body.put("id", "User").put("name", "User").put("endpoint", "/Users").put("schema", ScimUser.SCHEMA);
        body.put("description", "A person with a log-in of their own. Roles are given by the programme, not here.");
        meta(body, "ResourceType", "/ResourceTypes/User");
        return body;
    }

    private ObjectNode userSchema() {
        ObjectNode body = ScimJson.object();
        body.set("schemas", ScimJson.texts(CORE + "Schema"));
        body.put("id", ScimUser.SCHEMA).put("name", "User").put("description", "What is kept of a person.");
        ArrayNode attributes = body.putArray("attributes");
        attribute(attributes, "userName", "string", "immutable", "Log-in name; 3 to 60 letters, digits, . - or _.")
                .put("required", true)
                .put("uniqueness", "server");
        attribute(attributes, "displayName", "string", "immutable", "Name printed on signatures.");
        ArrayNode name = attribute(attributes, "name", "complex", "immutable", "Used where displayName is missing.")
                .putArray("subAttributes");
        attribute(name, "formatted", "string", "immutable", "Whole name.");
        attribute(name, "givenName", "string", "writeOnly", "Used where nothing else is given.");
        attribute(name, "familyName", "string", "writeOnly", "Used where nothing else is given.");
        attribute(attributes, "active", "boolean", "readWrite", "Whether the person may enter.");
        meta(body, "Schema", "/Schemas/" + ScimUser.SCHEMA);
        return body;
    }

    private static ObjectNode attribute(ArrayNode to, String name, String type, String mutability, String about) {
        return to.addObject()
                .put("name", name)
                .put("type", type)
                .put("multiValued", false)
                .put("description", about)
                .put("required", false)
                .put("caseExact", false)
                .put("mutability", mutability)
                .put("returned", mutability.equals("writeOnly") ? "never" : "default")
                .put("uniqueness", "none");
    }

    private void meta(ObjectNode body, String type, String path) {
        body.putObject("meta").put("resourceType", type).put("location", base + path);
    }
}

package org.scrubline.backup.file;

import java.nio.charset.StandardCharsets;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.DeserializationFeature;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** The manifest as JSON. */
final class ManifestJson {

    private static final JsonMapper JSON = JsonMapper.builder()
            .enable(DeserializationFeature.FAIL_ON_NULL_FOR_PRIMITIVES)
            .build();

    private ManifestJson() {}

    static byte[] write(Manifest manifest) {
        return JSON.writerWithDefaultPrettyPrinter()
                .writeValueAsString(manifest)
                .getBytes(StandardCharsets.UTF_8);
    }

    /** The format is looked at first: a later one may have another shape. */
    static Manifest read(byte[] bytes) {
        try {
            JsonNode root = JSON.readTree(bytes);
            int format = root.path("format").asInt(0);
            if (format > Manifest.FORMAT) {
                throw new BackupProblem("The backup has file format " + format + "; this program reads format "
                        + Manifest.FORMAT + ". Use the Scrubline that wrote it, or a newer one.");
            }
            return JSON.treeToValue(root, Manifest.class);
        } catch (JacksonException | NullPointerException malformed) {
            throw BackupProblem.damaged("its list of contents cannot be read.");
        }
    }
}

package org.scrubline.platform;

import java.util.List;

/** The server must not start like this; the message holds one sentence for each reason, for the operator. */
public class UnsafeSettings extends RuntimeException {

    public UnsafeSettings(List<String> sentences) {
        super(String.join("\n", sentences));
    }
}

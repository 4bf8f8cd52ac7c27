package org.scrubline.browser;

import com.google.gson.JsonObject;
import com.microsoft.playwright.CDPSession;
import com.microsoft.playwright.Page;

/** Chromium's own authenticator in software, as if built into the device a page is open on. */
public final class Authenticator {

    private final CDPSession devtools;
    private final String id;

    private Authenticator(CDPSession devtools, String id) {
        this.devtools = devtools;
        this.id = id;
    }

    /** One that recognises its owner and answers at once; it lasts as long as the page. */
    public static Authenticator on(Page page) {
        CDPSession devtools = page.context().newCDPSession(page);
        devtools.send("WebAuthn.enable");
        JsonObject options = new JsonObject();
        options.addProperty("protocol", "ctap2");
        options.addProperty("transport", "internal");
        options.addProperty("hasResidentKey", true);
        options.addProperty("hasUserVerification", true);
        options.addProperty("isUserVerified", true);
        options.addProperty("automaticPresenceSimulation", true);
        JsonObject add = new JsonObject();
        add.add("options", options);
        JsonObject added = devtools.send("WebAuthn.addVirtualAuthenticator", add);
        return new Authenticator(devtools, added.get("authenticatorId").getAsString());
    }

    /** Whether the finger, face or PIN fits from now on. */
    public void recognisesItsOwner(boolean recognised) {
        JsonObject set = new JsonObject();
        set.addProperty("authenticatorId", id);
        set.addProperty("isUserVerified", recognised);
        devtools.send("WebAuthn.setUserVerified", set);
    }
}

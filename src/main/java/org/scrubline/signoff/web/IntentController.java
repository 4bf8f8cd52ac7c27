package org.scrubline.signoff.web;

import org.scrubline.platform.Base64Url;
import org.scrubline.platform.CanonicalJson;
import org.scrubline.signoff.Intent;
import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.util.MultiValueMap;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;

/** Tells a page what its passkey has to sign. Depends on what was typed alone, stores nothing and looks nothing up. */
@Controller
class IntentController {

    /** Base64url, 32 bytes. */
    record Challenge(String challenge) {}

    @PostMapping("/signatures/intent")
    ResponseEntity<Challenge> challenge(@RequestParam MultiValueMap<String, String> form) {
        return TypedIntent.of(form)
                .map(Intent::hash)
                .map(hash -> new Challenge(Base64Url.text(CanonicalJson.hashBytes(hash))))
                .map(ResponseEntity::ok)
                .orElseGet(() ->
                        ResponseEntity.status(HttpStatus.UNPROCESSABLE_CONTENT).build());
    }
}

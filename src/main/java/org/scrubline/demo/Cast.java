package org.scrubline.demo;

import java.util.Map;
import org.scrubline.demo.plan.DemoCast;
import org.scrubline.people.Programme;
import org.scrubline.people.Site;
import org.scrubline.platform.SignedIn;

/** Who is there, by log-in name, and the sites by code. */
record Cast(Programme programme, Map<String, Site> sites, Map<String, SignedIn> members) {

    SignedIn member(String username) {
        SignedIn member = members.get(username);
        if (member == null) {
            throw new IllegalStateException("nobody is called " + username);
        }
        return member;
    }

    /** By id in the plan, such as T05. */
    SignedIn trainee(String id) {
        return member(DemoCast.trainee(id).username());
    }

    /** By id in the plan, such as S01. */
    SignedIn supervisor(String id) {
        return member(DemoCast.supervisor(id).username());
    }

    SignedIn director() {
        return member("delmarr");
    }

    Site site(String code) {
        Site site = sites.get(code);
        if (site == null) {
            throw new IllegalStateException("no site " + code);
        }
        return site;
    }
}

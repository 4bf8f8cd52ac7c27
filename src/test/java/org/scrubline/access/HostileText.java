package org.scrubline.access;

import java.util.List;

/** Texts that would become a script, an element or an attribute where a page forgets to escape them. Our own list. */
public final class HostileText {

    /** Set in the page by every payload that runs. */
    static final String RAN =
            "() => window.canary === true || document.querySelector('x-canary, [data-canary]') !== null";

    private static final String RUN = "window.canary=true";

    private HostileText() {}

    public static List<String> payloads() {
        return List.of(
                "<script>" + RUN + "</script>",
                "<ScRiPt>" + RUN + "</sCrIpT>",
                "<script src=data:text/javascript," + RUN + "></script>",
                "<script type=module>" + RUN + "</script>",
                "<img src=x onerror=" + RUN + ">",
                "<img src=x onerror=\"" + RUN + "\">",
                "<img/src=x/onerror=" + RUN + ">",
                "<svg onload=" + RUN + ">",
                "<svg><script>" + RUN + "</script></svg>",
                "<svg><animate onbegin=" + RUN + " attributeName=x dur=1s>",
                "<svg><a href=\"javascript:" + RUN + "\"><text y=20>x</text></a></svg>",
                "<math><mi href=\"javascript:" + RUN + "\">x</mi></math>",
                "<body onload=" + RUN + ">",
                "<iframe srcdoc=\"<script>parent." + RUN + "</script>\"></iframe>",
                "<iframe src=\"javascript:parent." + RUN + "\"></iframe>",
                "<object data=\"javascript:" + RUN + "\"></object>",
                "<embed src=\"javascript:" + RUN + "\">",
                "<details open ontoggle=" + RUN + ">x</details>",
                "<input autofocus onfocus=" + RUN + ">",
                "<video><source onerror=" + RUN + "></video>",
                "<audio src=x onerror=" + RUN + "></audio>",
                "<style>@import 'data:text/css,x'</style><x-canary>",
                "<link rel=stylesheet href=data:text/css,x><x-canary>",
                "<meta http-equiv=refresh content=\"0;url=data:text/html,x\"><x-canary>",
                "<base href=//elsewhere.invalid/><x-canary>",
                "<form action=//elsewhere.invalid><x-canary>",
                "<template><x-canary></template><x-canary>",
                "</title><script>" + RUN + "</script>",
                "</textarea><script>" + RUN + "</script>",
                "</script><script>" + RUN + "</script>",
                "--><script>" + RUN + "</script>",
                "]]><x-canary>",
                "\" data-canary=\"1",
                "' data-canary='1",
                "\" onmouseover=\"" + RUN + "\" data-canary=\"1",
                "` data-canary=1 `",
                "x\" autofocus onfocus=" + RUN + " data-canary=\"",
                "javascript:" + RUN,
                "${7*7}[[${7*7}]]__${7*7}__*{7*7}#{x}~{x}",
                "{{constructor.constructor('" + RUN + "')()}}",
                "&lt;x-canary&gt; &#60;x-canary&#62;",
                "\\u003cx-canary\\u003e");
    }
}

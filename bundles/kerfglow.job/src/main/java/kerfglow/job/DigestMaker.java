// SPDX-License-Identifier: Apache-2.0
package kerfglow.job;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import kerfglow.host.JobSheet;
import kerfglow.host.Result;
import kerfglow.host.ShopSheet;

/** The digests that bind a sign-off to what was signed. Line numbers and file places are left out, since moving a line changes nothing. */
final class DigestMaker {
    private DigestMaker() {
    }

    static SignOff.Digests of(Result result) {
        return new SignOff.Digests(result.proof().sha256(), sheet(result.job()), settings(result), checks(result));
    }

    static String sheet(JobSheet sheet) {
        return digest(List.of(SheetJson.canonical(sheet)));
    }

    private static String settings(Result result) {
        List<String> lines = new ArrayList<>();
        result.settings().forEach(used -> lines.add("setting " + used.key() + " [" + used.scope() + "] = " + used.value() + " " + used.unit()));
        for (Map.Entry<String, List<ShopSheet.RawItem>> kind : new TreeMap<>(result.shop().stock()).entrySet()) {
            for (ShopSheet.RawItem item : kind.getValue()) {
                StringBuilder line = new StringBuilder("stock ").append(kind.getKey());
                new TreeMap<>(item.fields()).forEach((name, field) -> line.append(" [").append(name).append("] = ").append(field.text()));
                lines.add(line.toString());
            }
        }
        result.shop().severities().forEach(change -> lines.add("severity " + change.rule() + " = " + change.severity().word()));
        return digest(lines);
    }

    private static String checks(Result result) {
        return digest(result.checks().stream().map(row -> row.check() + " " + row.version()).sorted().toList());
    }

    private static String digest(List<String> lines) {
        return DiskFile.digest(String.join("\n", lines).getBytes(StandardCharsets.UTF_8));
    }
}

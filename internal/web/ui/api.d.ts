// The server's interface, from its own description at /openapi.json. Made anew with: npm run api

export interface paths {
    "/api/answers": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * What can be asked
         * @description Every question with its inputs, for a form.
         */
        get: operations["list-answers"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/answers/{topic}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /**
         * One question, answered
         * @description The bytes of: rodwright answer TOPIC --json.
         */
        post: operations["ask"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/events": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * Word of changes
         * @description Server-sent events (HTML Living Standard, 9.2): the number of every piece at first, then of each that changes. Comments keep a silent stream open.
         */
        get: operations["listen"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/pieces": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * The pieces of the shop
         * @description Each with its size, weight, price and how its findings stand.
         */
        get: operations["list-pieces"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/pieces/{id}/book.html": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * The plan as a page of its own
         * @description For a stranger who builds the piece; without prices.
         */
        get: operations["get-book-html"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/pieces/{id}/book.pdf": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * The plan as a PDF file
         * @description For a stranger who builds the piece; without prices.
         */
        get: operations["get-book-pdf"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/pieces/{id}/book/article": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * The plan to put into a page
         * @description For a stranger who builds the piece; without prices.
         */
        get: operations["get-book-article"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/pieces/{id}/build": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * Everything derived from a piece
         * @description Without units these are the bytes of: rodwright derive --json.
         */
        get: operations["get-build"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/pieces/{id}/compare": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * Two moments of a piece, side by side
         * @description As it stood after each of two entries: what was taken back or withdrawn later stands yet.
         */
        get: operations["compare"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/pieces/{id}/cutting": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * How stock is cut, at the saw
         * @description For each layout the cuts by setting of stop and fence, where the stock goes, and why fewer pieces of it are not enough.
         */
        get: operations["get-cutting"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/pieces/{id}/cutting/more": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * What one more piece of stock would change
         * @description Solves one layout again with one more piece of each kind of stock. Takes up to a few seconds.
         */
        get: operations["get-one-more"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/pieces/{id}/drawings": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * The drawings of a piece
         * @description The views, then every part that is marked out, then how stock is cut and panels are glued up.
         */
        get: operations["list-drawings"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/pieces/{id}/drawings/{drawing}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * One drawing
         * @description As SVG or as DXF, by the ending of its name.
         */
        get: operations["get-drawing"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/pieces/{id}/entries": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /**
         * Write down what was decided and done
         * @description All of it or none. A fact in words is filled in from the piece as it stood at the base. A change that the client asks for is weighed, and waits. A yes to one also writes what made parts are for from then on. The same entries sent again change nothing.
         */
        post: operations["write-entries"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/pieces/{id}/findings/{picture}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * The picture of a finding
         * @description As SVG to put into a page: the tilt in every direction, lengths over the year, the sag of a panel, the sway of a frame. Findings that have one tell its name in the build.
         */
        get: operations["get-finding-picture"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/pieces/{id}/log": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * The log of a piece
         * @description Its numbered entries after the given number, in order, each in words.
         */
        get: operations["get-log"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/pieces/{id}/moments/{number}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * A piece as it stood after an entry
         * @description With its document, everything derived from it and its views. What was taken back or withdrawn later stands yet.
         */
        get: operations["moment"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/pieces/{id}/preview": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /**
         * What edits would do
         * @description Makes the edits on the piece as it stands and derives it anew. Nothing is stored.
         */
        post: operations["preview"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/pieces/{id}/searches": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * The searches of a piece
         * @description Those that run, and the last that are over.
         */
        get: operations["list-searches"];
        put?: never;
        /**
         * Look deeper for a layout
         * @description Begins to look for a cheaper way to cut one material of the piece as it stands, or for a proof that none is cheaper. Where that runs already, it is told. Few run at once.
         */
        post: operations["begin-search"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/pieces/{id}/searches/{search}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * How a search stands
         * @description With the best layout so far and how good it is known to be.
         */
        get: operations["get-search"];
        put?: never;
        post?: never;
        /**
         * End a search
         * @description The best so far stays. One that is over stays as it is.
         */
        delete: operations["cancel-search"];
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/pieces/{id}/searches/{search}/accept": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /**
         * Accept what a search found
         * @description Writes an entry: the stock is cut by this layout as long as parts, stock and prices are the same; withdrawing the entry ends that. Where the piece was changed since, so that other parts are cut or from other stock, it is a conflict. The same sent again changes nothing.
         */
        post: operations["accept-layout"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/pieces/{id}/searches/{search}/pictures": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * What a search found beside what there was
         * @description Drawings of how stock is cut by the layout at hand and by the best so far.
         */
        get: operations["compare-search"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/pieces/{id}/sizes": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * What can be typed
         * @description The named sizes with their formulas, and every other value of the document that is typed, each with the path that an edit names.
         */
        get: operations["get-sizes"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/pieces/{id}/solids": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * The piece in space
         * @description Every body as a box, a cylinder or a slab with openings, in millimetres.
         */
        get: operations["get-solids"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/pieces/{id}/take": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /**
         * Take edits that were weighed, or a way out
         * @description Weighs them again on the piece as it stands, and writes the edits and what made parts are for from then on, all of it or none. The same sent again changes nothing.
         */
        post: operations["take"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/pieces/{id}/text": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * The document of a piece
         * @description As it stands after its last entry.
         */
        get: operations["get-text"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/pieces/{id}/things": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * What there is of a piece under way
         * @description The parts that were made, what was bought, and the distances that were measured.
         */
        get: operations["get-things"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/pieces/{id}/weigh": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /**
         * What edits do to what is made already
         * @description Says what becomes of every part that is made, what is to be made again, and what it costs. Nothing is stored.
         */
        post: operations["weigh"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/pieces/{id}/wrong": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /**
         * The ways out when something went wrong
         * @description Each with what it costs, the cheapest first. Nothing is stored: take writes the one that is chosen, with what went wrong.
         */
        post: operations["ways-out"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/pieces/{id}/yields": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * What bought stock still gives
         * @description Of each kind of part still to be made from such stock, how many come out one after the other if the first cut begins at start.
         */
        get: operations["get-yields"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
}
export type webhooks = Record<string, never>;
export interface components {
    schemas: {
        AcceptInBody: {
            /**
             * Format: int64
             * @description The number of the last entry that the writer has seen.
             */
            base: number;
            /** @description A UUID of version 7 that the writer makes, so that the same sent again is known. */
            id?: string;
        };
        Anew: {
            /** Format: int64 */
            cents: number;
            place: string;
            tag: string;
            why: string;
        };
        Another: {
            /** Format: int64 */
            cents: number;
            kind: string;
            to: string;
            words: string;
        };
        BeginInBody: {
            /**
             * @description What is cut, as in the build's cut.
             * @enum {string}
             */
            kind: "stick" | "panel" | "sheet";
            /** @description Of what, as in the build's cut: 3/4, white-oak 5/4. */
            material: string;
            /**
             * Format: int64
             * @description How long to look at most; left out, 20.
             */
            seconds?: number;
        };
        BoxBody: {
            max: number[] | null;
            min: number[] | null;
        };
        CompareBody: {
            /** Format: int64 */
            from: number;
            ripple: components["schemas"]["Ripple"];
            /** Format: int64 */
            to: number;
            /** @description A sentence for each thing that differs. */
            words: string[] | null;
        };
        ComparedOutBody: {
            /** @description Of the layout that the search was begun with. */
            before: components["schemas"]["PictureBody"][] | null;
            /** @description Of the best so far. */
            best: components["schemas"]["PictureBody"][] | null;
        };
        Cost: {
            currency: string;
            /** Format: double */
            handsH: number;
            lost: string[] | null;
            /** Format: int64 */
            parts: number;
            /** Format: int64 */
            total: number | null;
        };
        Cut: {
            /** Format: int64 */
            count: number;
            /** Format: double */
            from: number;
            name: string;
            tag: string;
            /** Format: double */
            to: number;
            what: string;
        };
        CuttingBody: {
            /** @description Sticks, then boards, then sheets, each sorted by material. */
            layouts: components["schemas"]["CuttingLine"][] | null;
        };
        CuttingLine: {
            cautions: string[] | null;
            /** @description How often a stop or fence is set, and whether fewer would do. */
            changes: string;
            /** @description What the cost is made of where it is not the price of the stock alone; empty else. */
            cost: string;
            /** @enum {string} */
            kind: "stick" | "panel" | "sheet";
            material: string;
            /** @description How a setting is measured. */
            note: string;
            /** @description All stock that is opened: a length of sticks, an area else. */
            opened: string;
            /** @description In order. */
            runs: components["schemas"]["RunLine"][] | null;
            /** @description Where it goes; the shares add up to 1. */
            shares: components["schemas"]["ShareLine"][] | null;
            /** @description Why fewer pieces of stock are not enough; empty where there is nothing to say. */
            why: string;
        };
        CylinderBody: {
            /** @description One end of its axis. */
            a: number[] | null;
            b: number[] | null;
            /** Format: double */
            radius: number;
        };
        Days: {
            /** Format: int64 */
            from: number;
            /** Format: int64 */
            to: number;
        };
        DistanceBody: {
            /**
             * @description What it does to the frame.
             * @enum {string}
             */
            bearing: "moves" | "agrees" | "contradicts" | "compared" | "no such thing" | "same place";
            /**
             * Format: double
             * @description As drawn, over the same faces.
             */
            drawn: number;
            from: string;
            /**
             * Format: double
             * @description As the frame stands by all that was measured.
             */
            now: number;
            /**
             * Format: int64
             * @description Of its entry; 0 where it follows from a pipe's own length.
             */
            number: number;
            /**
             * @description Which faces the tape was laid to; empty: the centres.
             * @enum {string}
             */
            over: "" | "outside" | "inside";
            to: string;
            /**
             * Format: double
             * @description As measured, in millimetres.
             */
            value: number;
        };
        DrawingLine: {
            /** @description What it shows, for who can't see it. */
            alt: string;
            id: string;
            /** @enum {string} */
            kind: "view" | "part" | "cut" | "glue";
            /**
             * Format: int64
             * @description 1 : per is its scale on paper.
             */
            per: number;
            title: string;
        };
        DrawingsBody: {
            /** @description In the book's order. */
            drawings: components["schemas"]["DrawingLine"][] | null;
        };
        EditBody: {
            /** @description As in sizes and fields: sizes/low level. */
            path: string;
            /** @description As it is typed: 14 3/8. */
            value: string;
        };
        EntriesInBody: {
            /**
             * Format: int64
             * @description The number of the last entry that the writer has seen.
             */
            base: number;
            /** @description Written one after the other, all or none. */
            entries: components["schemas"]["WantedEntry"][] | null;
        };
        EntryBody: {
            actor: string;
            /**
             * Format: int64
             * @description When, in milliseconds since 1970, UTC.
             */
            at: number;
            /**
             * Format: int64
             * @description The number of the last entry that its writer had seen.
             */
            base: number;
            id: string;
            /** @enum {string} */
            kind: "edit" | "undo" | "fact" | "asked" | "answer" | "withdrawn" | "accepted";
            /** @description An undo by the asker takes exactly this. */
            mayUndo: boolean;
            /** @description The id of the entry that it is about. */
            names: string;
            new: string;
            /** Format: int64 */
            number: number;
            old: string;
            /** @description Of a change that was asked for. */
            order?: components["schemas"]["OrderBody"];
            path: string;
            /** @description Nothing takes it back. */
            stands: boolean;
            /** @description What a fact tells: made, bought, measured. */
            what: string;
            /** @description The whole in a sentence. */
            words: string;
        };
        Fate: {
            /** Format: int64 */
            cents: number;
            from: string;
            /** Format: double */
            handsH: number;
            kind: string;
            label: string;
            off: components["schemas"]["OffMM"][] | null;
            others: components["schemas"]["Another"][] | null;
            shows: string[] | null;
            state: string;
            tag: string;
            thing: string;
            to: string;
            tools: string[] | null;
            unchanged: boolean;
            words: string;
        };
        FieldBody: {
            /** @description What it is a value of, in words. */
            group: string;
            /** @enum {string} */
            kind: "length" | "count" | "word";
            label: string;
            /** @description What an edit names: panels/deep board/thickness. */
            path: string;
            /** @description As it is written. */
            value: string;
        };
        GoodBody: {
            /**
             * Format: double
             * @description No layout costs less.
             */
            bound: number;
            /**
             * @description Of which layouts that is true; empty: of all.
             * @enum {string}
             */
            boundOf: "" | "without recut";
            /**
             * Format: double
             * @description Money; where there are no prices, a length or an area.
             */
            cost: number;
            /**
             * Format: double
             * @description The share of the cost that another could save at most.
             */
            gap: number;
            /**
             * Format: int64
             * @description Parts that no stock is left for.
             */
            notPlaced: number;
            /** @description No layout costs less than this. */
            proven: boolean;
        };
        GoodsBody: {
            /**
             * Format: int64
             * @description What was paid; null where nobody said.
             */
            cents: number | null;
            /** Format: double */
            count: number;
            /** @description Of the entry that told of it. */
            id: string;
            /** @description Of what is sold by the piece. */
            item: string;
            /** @enum {string} */
            kind: "board" | "stick" | "sheet" | "item";
            /**
             * Format: double
             * @description Of its length, by the cuts that were told.
             */
            left: number;
            material: string;
            /** @description Of a board: 5/4. */
            quarters: string;
            /** @description Along, across and thick, in millimetres, as bought. */
            size: number[] | null;
            tag: string;
        };
        InputBody: {
            choices?: string[] | null;
            /** @description What stands for it when left out. */
            default?: string;
            example: string;
            help: string;
            name: string;
            optional: boolean;
            takes: string;
            units?: string;
        };
        Line: {
            /**
             * Format: int64
             * @description When, in milliseconds since 1970, UTC.
             */
            changed: number;
            currency: string;
            /**
             * Format: int64
             * @description Calendar days of the work.
             */
            days: number | null;
            /**
             * Format: int64
             * @description How many findings fail.
             */
            failing: number;
            /** @description To which the piece is drawn: 1/16, 1 mm; what it is shown in. */
            fineness?: string;
            id: string;
            /** Format: double */
            massKg: number | null;
            name: string;
            /**
             * Format: int64
             * @description Of its last entry.
             */
            number: number;
            /** @description Why nothing can be derived from its document. */
            problem?: string;
            /** @description Along, across and up, in millimetres. */
            size: number[] | null;
            /** Format: int64 */
            tight: number;
            /**
             * Format: int64
             * @description Of the quote, in cents; null where it is not known.
             */
            total: number | null;
            /** Format: int64 */
            unknown: number;
            /** @enum {string} */
            worst: "stands" | "tight" | "fails" | "unknown";
        };
        LogBody: {
            delivered: boolean;
            entries: components["schemas"]["EntryBody"][] | null;
            /** @description The piece is ready. */
            finished: boolean;
            /**
             * Format: int64
             * @description Of the last entry there is.
             */
            number: number;
            /** @description The changes that the client asked for and that were not withdrawn, in order. */
            orders: components["schemas"]["OrderBody"][] | null;
        };
        Made: {
            added: string[] | null;
            gone: string[] | null;
        };
        Mass: {
            /** Format: double */
            from: number;
            /** Format: double */
            to: number;
        };
        MomentBody: {
            /** @description As in get-build. */
            build: Record<string, never>;
            /** Format: int64 */
            number: number;
            /** @description The document as it stood. */
            text: string;
            views: components["schemas"]["ViewsBody"];
        };
        Money: {
            currency: string;
            /** Format: int64 */
            from: number | null;
            /** Format: int64 */
            to: number | null;
        };
        Moved: {
            check: string;
            from: string;
            place: string;
            to: string;
            verdict: string;
        };
        OffMM: {
            /** Format: double */
            mm: number;
            side: string;
        };
        OneMoreBody: {
            /** @description One for each size that is sold, and for what lies in the rack and is not opened. */
            changes: components["schemas"]["OneMoreLine"][] | null;
            /** @description The same in sentences; kinds of which nothing is gained by buying one more stand in one. */
            words: string[] | null;
        };
        OneMoreLine: {
            /**
             * Format: double
             * @description What the whole costs less when it is not.
             */
            free: number;
            /**
             * Format: double
             * @description What the whole costs more when it is paid for; below 0 less.
             */
            more: number;
            name: string;
            /** @description It lies in the rack. */
            rack: boolean;
            /** @description The best layout found with it cuts it up. */
            taken: boolean;
            words: string;
        };
        OpeningBody: {
            /**
             * Format: double
             * @description From the underside; 0 goes through.
             */
            depth: number;
            max: number[] | null;
            /** @description In plan. */
            min: number[] | null;
            /**
             * Format: double
             * @description Of its corners.
             */
            radius: number;
        };
        OrderBody: {
            answered: boolean;
            /**
             * Format: int64
             * @description More or less to pay, as the client was told; null where it is not known.
             */
            cents: number | null;
            edits: components["schemas"]["EditBody"][] | null;
            /** @description Of its entry; an answer names it. */
            id: string;
            /** Format: int64 */
            no: number;
            /**
             * Format: int64
             * @description Of its entry.
             */
            number: number;
            /** @description The new day, as the client was told: 2027-01-15. */
            ready: string;
            words: string;
            yes: boolean;
        };
        PictureBody: {
            /** @description To put into a page. */
            svg: string;
            title: string;
        };
        PieceEvent: {
            /**
             * Format: int64
             * @description Of its last entry.
             */
            number: number;
            /** @description Its id. */
            piece: string;
        };
        PieceListBody: {
            /** @description Those changed last first. */
            pieces: components["schemas"]["Line"][] | null;
        };
        Place: {
            /** Format: int64 */
            column: number;
            /** @description The piece's name. */
            file: string;
            /** Format: int64 */
            line: number;
        };
        PreviewBody: {
            /** @description As in get-build. */
            build: Record<string, never>;
            /**
             * Format: int64
             * @description Of the last entry of the piece that the edits were tried on.
             */
            number: number;
            /** @description What differs from the piece as it stands. */
            ripple: components["schemas"]["Ripple"];
            solids: components["schemas"]["SolidsBody"];
            views: components["schemas"]["ViewsBody"];
        };
        PreviewInBody: {
            /**
             * Format: int64
             * @description The number of the last entry that the asker has seen.
             */
            base: number;
            /** @description Made one after the other. */
            edits: components["schemas"]["EditBody"][] | null;
        };
        Problem: {
            /** @description Of a conflict: who wrote it. */
            actor?: string;
            /** @description What is wrong, in words for a person. */
            detail: string;
            /**
             * Format: int64
             * @description Of a conflict: the number of the entry that wrote it.
             */
            number?: number;
            /** @description The value that is wrong: a path in the document, or a name in the request. */
            path?: string;
            /** @description Where in the document it is. */
            place?: components["schemas"]["Place"];
            /** @description What would be right. */
            right?: string;
            /**
             * Format: int64
             * @description The status of the answer.
             */
            status: number;
            /** @description Of a conflict: the value that stands there now. */
            theirs?: string;
            /** @description The status in words. */
            title: string;
            /** @description What kind of problem it is; about:blank: the status says it. */
            type: string;
            /** @description Of a conflict: the value that was to be written. */
            yours?: string;
        };
        Put: {
            new: string;
            path: string;
        };
        Redo: {
            /** Format: double */
            handsH: number;
            parts: string[] | null;
            title: string;
            tool: string;
            /** Format: double */
            waitH: number;
            work: string;
        };
        Relaid: {
            after: string[] | null;
            before: string[] | null;
            tag: string;
        };
        Ripple: {
            boards: components["schemas"]["Stock"][] | null;
            cuts: components["schemas"]["Cut"][] | null;
            days: components["schemas"]["Days"];
            findings: components["schemas"]["Turn"][] | null;
            massKg: components["schemas"]["Mass"];
            money: components["schemas"]["Money"];
            parts: components["schemas"]["Made"];
        };
        RunLine: {
            /** @description Done to every piece of stock before anything is cut; its steps have no numbers. */
            every: boolean;
            /** @description What stop or fence is set to; or that ends or edges are squared. */
            head: string;
            steps: components["schemas"]["StepLine"][] | null;
        };
        SearchBody: {
            /**
             * Format: int64
             * @description The number of the entry that accepts it; 0 where none does.
             */
            accepted: number;
            /** @description The layout that it was begun with. */
            before: components["schemas"]["GoodBody"];
            /** @description The best so far. */
            best: components["schemas"]["GoodBody"];
            /** @description The best so far is better than the layout it was begun with, or its bound is closer. */
            better: boolean;
            /** @description The piece still cuts just these parts from this stock, so that the layout can be accepted. */
            fits: boolean;
            id: string;
            /** @enum {string} */
            kind: "stick" | "panel" | "sheet";
            /** @description The best so far. */
            layout: Record<string, never>;
            material: string;
            /**
             * Format: int64
             * @description Of the last entry of the piece that it was begun on.
             */
            number: number;
            /**
             * Format: double
             * @description How long it looks at most.
             */
            seconds: number;
            /** @enum {string} */
            state: "running" | "done" | "cancelled" | "failed";
            /**
             * Format: double
             * @description How long it has looked, in seconds.
             */
            took: number;
        };
        SearchesOutBody: {
            /** @description In the order they were begun. */
            searches: components["schemas"]["SearchBody"][] | null;
        };
        ShareLine: {
            name: string;
            /**
             * Format: double
             * @description Of all that is opened, 0 to 1.
             */
            share: number;
            /** @description How much, with its unit. */
            text: string;
            /** @enum {string} */
            use: "parts" | "later" | "saw cuts" | "trimming" | "defects" | "kept" | "lost";
        };
        SizeBody: {
            /** @description As it is written. */
            formula: string;
            name: string;
            note: string;
            /** @enum {string} */
            origin: "assumed" | "client" | "measured" | "rule" | "standard";
            /** @description What an edit names: sizes/low level. */
            path: string;
            /** @description The value by the tape; ≈ marks one that is rounded. */
            text: string;
            /** @description The names of the sizes that its formula uses. */
            uses: string[] | null;
            /**
             * Format: double
             * @description In millimetres; one measured on site wins over the formula.
             */
            value: number;
        };
        SizesBody: {
            /** @description Every other value that is typed, in the order of the document; those that only name a size are left out. */
            fields: components["schemas"]["FieldBody"][] | null;
            /** @description The named sizes, in the order of the document. */
            sizes: components["schemas"]["SizeBody"][] | null;
        };
        SlabBody: {
            max: number[] | null;
            min: number[] | null;
            openings: components["schemas"]["OpeningBody"][] | null;
        };
        SolidBody: {
            box?: components["schemas"]["BoxBody"];
            cylinder?: components["schemas"]["CylinderBody"];
            /** @enum {string} */
            kind: "panel" | "stick" | "fitting" | "foot" | "held";
            name: string;
            slab?: components["schemas"]["SlabBody"];
            /** @description Of the physical part; empty for what is held. */
            tag: string;
        };
        SolidsBody: {
            max: number[] | null;
            /** @description Of the box round the piece without what it holds. */
            min: number[] | null;
            solids: components["schemas"]["SolidBody"][] | null;
        };
        StepLine: {
            does: string;
            /** @description What is left of what was cut, to check by; empty where nothing is. */
            left: string;
            /**
             * Format: int64
             * @description The number in rings on the drawings of boards and sheets; 0 where every piece is squared.
             */
            n: number;
            /** @description The piece of stock, as the drawings number it. */
            on: string;
        };
        Stock: {
            /** Format: double */
            from: number;
            item: string;
            /** Format: double */
            to: number;
            unit: string;
        };
        TakeInBody: {
            /**
             * Format: int64
             * @description The number of the last entry that the writer has seen.
             */
            base: number;
            /** @description Made one after the other. */
            edits: components["schemas"]["EditBody"][] | null;
            /** @description A UUID of version 7 for each entry, in the order they are written, so that the same sent again is known. Entries that have none get one that follows from the first. */
            ids?: string[] | null;
            /** @description What went wrong, where a way out of that is taken: it is written first. */
            say?: string;
            /** @description The kind of the way out that is taken; its edits go with it. */
            way?: string;
        };
        ThingBody: {
            /**
             * Format: double
             * @description Hours with hands spent on it.
             */
            hoursH: number;
            /** @description Of the entry that first told of it. */
            id: string;
            /** @enum {string} */
            kind: "panel" | "pipe";
            /** @description The tag that is written on it. */
            label: string;
            material: string;
            /** @description Somebody measured it; else it is as drawn. */
            measured: boolean;
            /** @description What it is for; empty: it is on the rack. */
            place: string;
            /** @description Along the grain, across it and thick, in millimetres; of a pipe its length first. */
            size: number[] | null;
            /** @description What went wrong with it; empty: it can be used. */
            spoiled: string;
            /** @description How far it has come: blank cut, glued, sized, shaped, filled, sanded, finished, fitted. */
            state: string;
            /** @description The tag of the stock it was cut from. */
            stock: string;
            /** @description In the plan now; empty where it serves nothing. */
            tag: string;
            /** @description What is still to be done so that it serves; empty where it serves as it is. */
            todo: string;
            /** @description Why it serves nothing though it is meant for a place. */
            why: string;
        };
        ThingsBody: {
            /** @description What was measured of the standing frame, in order. */
            distances: components["schemas"]["DistanceBody"][] | null;
            /** @description What was bought, in order. */
            goods: components["schemas"]["GoodsBody"][] | null;
            /**
             * Format: int64
             * @description Of the last entry.
             */
            number: number;
            /** @description The parts that were made, in the order they were first told of. */
            things: components["schemas"]["ThingBody"][] | null;
        };
        TopicBody: {
            /** @description The names of what is answered, the main one first. */
            answers: string[] | null;
            /** @description Inputs that go together, each as it is typed. */
            example: {
                [key: string]: string;
            };
            inputs: components["schemas"]["InputBody"][] | null;
            question: string;
            /** @description Which inputs go together, in words. */
            rules: string[] | null;
            topic: string;
        };
        TopicsOutBody: {
            topics: components["schemas"]["TopicBody"][] | null;
        };
        Turn: {
            check: string;
            from: string;
            place: string;
            to: string;
        };
        ViewsBody: {
            /** @description SVG, to put into a page. */
            front: string;
            /** @description From the right. */
            side: string;
            top: string;
        };
        WantedEntry: {
            /**
             * Format: int64
             * @description When it happened, in milliseconds since 1970, UTC; left out, now.
             */
            at?: number;
            /** @description Of an asked change: the values it would put in. */
            edits?: components["schemas"]["EditBody"][] | null;
            /** @description A UUID of version 7 that the writer makes, so that the same sent again is known. */
            id?: string;
            /** @enum {string} */
            kind: "edit" | "undo" | "fact" | "asked" | "answer" | "withdrawn";
            /** @description Of an undo, an answer and what is withdrawn: the id of the entry it is about. */
            names?: string;
            /** @description Of an edit: the value as it is typed. */
            new?: string;
            /** @description Of an edit, as in sizes and fields. */
            path?: string;
            /** @description Of a fact: what happened, on one line: made C2.1 cut-pipe 26 1/2 in in 25 min. */
            say?: string;
            /** @description Of an asked change: what the client asked for. */
            words?: string;
            /** @description Of an answer: the change is taken. */
            yes?: boolean;
        };
        WayOut: {
            /** Format: int64 */
            cents: number | null;
            /** Format: int64 */
            days: number;
            edits: components["schemas"]["Put"][] | null;
            /** Format: double */
            handsH: number;
            kind: string;
            shows: string[] | null;
            weighed: components["schemas"]["Weighed"];
            words: string;
        };
        WeighInBody: {
            /**
             * Format: int64
             * @description The number of the last entry that the asker has seen.
             */
            base: number;
            /** @description Made one after the other. */
            edits: components["schemas"]["EditBody"][] | null;
        };
        Weighed: {
            again: components["schemas"]["Anew"][] | null;
            cost: components["schemas"]["Cost"];
            edits: components["schemas"]["Put"][] | null;
            fates: components["schemas"]["Fate"][] | null;
            figures: components["schemas"]["Moved"][] | null;
            nothing: boolean;
            papers: string[] | null;
            promise: components["schemas"]["Days"];
            redo: components["schemas"]["Redo"][] | null;
            ripple: components["schemas"]["Ripple"];
            stock: components["schemas"]["Relaid"][] | null;
            unknown: string[] | null;
            words: string[] | null;
        };
        WeighedBody: {
            again: components["schemas"]["Anew"][] | null;
            cost: components["schemas"]["Cost"];
            edits: components["schemas"]["Put"][] | null;
            fates: components["schemas"]["Fate"][] | null;
            figures: components["schemas"]["Moved"][] | null;
            nothing: boolean;
            /**
             * Format: int64
             * @description Of the last entry of the piece that they were weighed on.
             */
            number: number;
            papers: string[] | null;
            promise: components["schemas"]["Days"];
            redo: components["schemas"]["Redo"][] | null;
            ripple: components["schemas"]["Ripple"];
            stock: components["schemas"]["Relaid"][] | null;
            unknown: string[] | null;
            words: string[] | null;
        };
        WrittenBody: {
            /** @description As they are kept; with those that follow from an answer. */
            entries: components["schemas"]["EntryBody"][] | null;
            /**
             * Format: int64
             * @description Of the last entry there is.
             */
            number: number;
        };
        WrongBody: {
            /** @description What went wrong, as it was understood. */
            fact: string;
            /**
             * Format: int64
             * @description Of the last entry of the piece as it was taken to stand.
             */
            number: number;
            /** @description The cheapest first. */
            ways: components["schemas"]["WayOut"][] | null;
        };
        WrongInBody: {
            /**
             * Format: int64
             * @description The number of the last entry that the asker has seen.
             */
            base: number;
            /** @description What went wrong, on one line: wrong C2.1 25 3/4 in: cut too short. */
            say: string;
        };
        Yield: {
            /** Format: double */
            left: number;
            parts: components["schemas"]["YieldPart"][] | null;
            /** Format: double */
            start: number;
            stock: string;
        };
        YieldPart: {
            /** Format: int64 */
            count: number;
            /** Format: double */
            long: number;
            name: string;
            /** Format: double */
            short: number;
            tag: string;
            /** Format: int64 */
            wanted: number;
        };
    };
    responses: never;
    parameters: never;
    requestBodies: never;
    headers: never;
    pathItems: never;
}
export type $defs = Record<string, never>;
export interface operations {
    "list-answers": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description OK */
            200: {
                headers: {
                    "Cache-Control"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["TopicsOutBody"];
                };
            };
            /** @description What went wrong. */
            default: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    ask: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                topic: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": {
                    [key: string]: string;
                };
            };
        };
        responses: {
            /** @description The answer, with formulas, sources and cautions. */
            200: {
                headers: {
                    "Cache-Control"?: string;
                    "Content-Disposition"?: string;
                    "Content-Type"?: string;
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": Record<string, never>;
                };
            };
            /** @description What went wrong. */
            default: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    listen: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description OK */
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "text/event-stream": {
                        data: components["schemas"]["PieceEvent"];
                        /**
                         * @description The event name.
                         * @constant
                         */
                        event: "piece";
                        /** @description The event ID. */
                        id?: number;
                        /** @description The retry time in milliseconds. */
                        retry?: number;
                    }[];
                };
            };
            /** @description What went wrong. */
            default: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    "list-pieces": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description OK */
            200: {
                headers: {
                    "Cache-Control"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["PieceListBody"];
                };
            };
            /** @description What went wrong. */
            default: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    "get-book-html": {
        parameters: {
            query?: {
                /** @description The tape to show lengths by; left out, the piece's own. */
                units?: "inch" | "metric";
                /** @description Left out, A4. */
                paper?: "a4" | "letter";
            };
            header?: {
                /** @description The ETag that the asker has. */
                "If-None-Match"?: string;
            };
            path: {
                /** @description The piece's id. */
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description The plan. */
            200: {
                headers: {
                    "Cache-Control"?: string;
                    "Content-Disposition"?: string;
                    "Content-Type"?: string;
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "text/html": string;
                };
            };
            /** @description What went wrong. */
            default: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    "get-book-pdf": {
        parameters: {
            query?: {
                /** @description The tape to show lengths by; left out, the piece's own. */
                units?: "inch" | "metric";
                /** @description Left out, A4. */
                paper?: "a4" | "letter";
            };
            header?: {
                /** @description The ETag that the asker has. */
                "If-None-Match"?: string;
            };
            path: {
                /** @description The piece's id. */
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description The plan. */
            200: {
                headers: {
                    "Cache-Control"?: string;
                    "Content-Disposition"?: string;
                    "Content-Type"?: string;
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/pdf": string;
                };
            };
            /** @description What went wrong. */
            default: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    "get-book-article": {
        parameters: {
            query?: {
                /** @description The tape to show lengths by; left out, the piece's own. */
                units?: "inch" | "metric";
                /** @description Left out, A4. */
                paper?: "a4" | "letter";
            };
            header?: {
                /** @description The ETag that the asker has. */
                "If-None-Match"?: string;
            };
            path: {
                /** @description The piece's id. */
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description The plan. */
            200: {
                headers: {
                    "Cache-Control"?: string;
                    "Content-Disposition"?: string;
                    "Content-Type"?: string;
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "text/html": string;
                };
            };
            /** @description What went wrong. */
            default: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    "get-build": {
        parameters: {
            query?: {
                /** @description The tape to show lengths by; left out, the piece's own. */
                units?: "inch" | "metric";
            };
            header?: {
                /** @description The ETag that the asker has. */
                "If-None-Match"?: string;
            };
            path: {
                /** @description The piece's id. */
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description The build. */
            200: {
                headers: {
                    "Cache-Control"?: string;
                    "Content-Disposition"?: string;
                    "Content-Type"?: string;
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": Record<string, never>;
                };
            };
            /** @description What went wrong. */
            default: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    compare: {
        parameters: {
            query?: {
                /** @description The tape to show lengths by, and to read those that are said without a unit; left out, the piece's own. */
                units?: "inch" | "metric";
                /** @description The number of an entry; 0, the piece as it began. */
                from?: number;
                /** @description The number of an entry; left out, the last. */
                to?: number;
            };
            header?: never;
            path: {
                /** @description The piece's id. */
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description OK */
            200: {
                headers: {
                    "Cache-Control"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["CompareBody"];
                };
            };
            /** @description What went wrong. */
            default: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    "get-cutting": {
        parameters: {
            query?: {
                /** @description The tape to show lengths by; left out, the piece's own. */
                units?: "inch" | "metric";
            };
            header?: {
                /** @description The ETag that the asker has. */
                "If-None-Match"?: string;
            };
            path: {
                /** @description The piece's id. */
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description OK */
            200: {
                headers: {
                    "Cache-Control"?: string;
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["CuttingBody"];
                };
            };
            /** @description What went wrong. */
            default: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    "get-one-more": {
        parameters: {
            query: {
                /** @description The tape to show lengths by; left out, the piece's own. */
                units?: "inch" | "metric";
                /** @description Of the layout. */
                kind: "stick" | "panel" | "sheet";
                /** @description Of the layout: white-oak 5/4, 3/4. */
                material: string;
            };
            header?: {
                /** @description The ETag that the asker has. */
                "If-None-Match"?: string;
            };
            path: {
                /** @description The piece's id. */
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description OK */
            200: {
                headers: {
                    "Cache-Control"?: string;
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["OneMoreBody"];
                };
            };
            /** @description What went wrong. */
            default: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    "list-drawings": {
        parameters: {
            query?: {
                /** @description The tape to show lengths by; left out, the piece's own. */
                units?: "inch" | "metric";
                /** @description The width there is on paper, in millimetres; left out, that of a book's sheet. */
                width?: number;
            };
            header?: {
                /** @description The ETag that the asker has. */
                "If-None-Match"?: string;
            };
            path: {
                /** @description The piece's id. */
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description OK */
            200: {
                headers: {
                    "Cache-Control"?: string;
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["DrawingsBody"];
                };
            };
            /** @description What went wrong. */
            default: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    "get-drawing": {
        parameters: {
            query?: {
                /** @description The tape to show lengths by; left out, the piece's own. */
                units?: "inch" | "metric";
                /** @description The width there is on paper, in millimetres; left out, that of a book's sheet. */
                width?: number;
            };
            header?: {
                /** @description The ETag that the asker has. */
                "If-None-Match"?: string;
            };
            path: {
                /** @description The piece's id. */
                id: string;
                /** @description The drawing's id, with .svg (to put into a page) or .dxf (R12, full size in millimetres) behind it. */
                drawing: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description The drawing; image/vnd.dxf where it is asked for. */
            200: {
                headers: {
                    "Cache-Control"?: string;
                    "Content-Disposition"?: string;
                    "Content-Type"?: string;
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "image/svg+xml": string;
                };
            };
            /** @description What went wrong. */
            default: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    "write-entries": {
        parameters: {
            query?: {
                /** @description The tape to show lengths by, and to read those that are said without a unit; left out, the piece's own. */
                units?: "inch" | "metric";
            };
            header?: {
                /** @description Who writes or asks, 1 to 100 letters; left out, maker. */
                "X-Actor"?: string;
            };
            path: {
                /** @description The piece's id. */
                id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["EntriesInBody"];
            };
        };
        responses: {
            /** @description OK */
            200: {
                headers: {
                    "Cache-Control"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["WrittenBody"];
                };
            };
            /** @description What went wrong. */
            default: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    "get-finding-picture": {
        parameters: {
            query?: {
                /** @description The tape to show lengths by; left out, the piece's own. */
                units?: "inch" | "metric";
                /** @description The width there is on paper, in millimetres; left out, that of a book's sheet. */
                width?: number;
            };
            header?: {
                /** @description The ETag that the asker has. */
                "If-None-Match"?: string;
            };
            path: {
                /** @description The piece's id. */
                id: string;
                /** @description The picture's name, as the build's finding tells it, with .svg behind it. */
                picture: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description The picture. */
            200: {
                headers: {
                    "Cache-Control"?: string;
                    "Content-Disposition"?: string;
                    "Content-Type"?: string;
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "image/svg+xml": string;
                };
            };
            /** @description What went wrong. */
            default: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    "get-log": {
        parameters: {
            query?: {
                /** @description The tape to show lengths by, and to read those that are said without a unit; left out, the piece's own. */
                units?: "inch" | "metric";
                /** @description The number of the last entry that the asker has. */
                after?: number;
            };
            header?: {
                /** @description Who writes or asks, 1 to 100 letters; left out, maker. */
                "X-Actor"?: string;
            };
            path: {
                /** @description The piece's id. */
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description OK */
            200: {
                headers: {
                    "Cache-Control"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["LogBody"];
                };
            };
            /** @description What went wrong. */
            default: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    moment: {
        parameters: {
            query?: {
                /** @description The tape to show lengths by, and to read those that are said without a unit; left out, the piece's own. */
                units?: "inch" | "metric";
            };
            header?: never;
            path: {
                /** @description The piece's id. */
                id: string;
                /** @description The number of an entry; 0, the piece as it began. */
                number: number;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description OK */
            200: {
                headers: {
                    "Cache-Control"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["MomentBody"];
                };
            };
            /** @description What went wrong. */
            default: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    preview: {
        parameters: {
            query?: {
                /** @description The tape to show lengths by; left out, the piece's own. */
                units?: "inch" | "metric";
            };
            header?: never;
            path: {
                /** @description The piece's id. */
                id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["PreviewInBody"];
            };
        };
        responses: {
            /** @description OK */
            200: {
                headers: {
                    "Cache-Control"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["PreviewBody"];
                };
            };
            /** @description What went wrong. */
            default: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    "list-searches": {
        parameters: {
            query?: never;
            header?: never;
            path: {
                /** @description The piece's id. */
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description OK */
            200: {
                headers: {
                    "Cache-Control"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["SearchesOutBody"];
                };
            };
            /** @description What went wrong. */
            default: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    "begin-search": {
        parameters: {
            query?: never;
            header?: never;
            path: {
                /** @description The piece's id. */
                id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["BeginInBody"];
            };
        };
        responses: {
            /** @description OK */
            200: {
                headers: {
                    "Cache-Control"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["SearchBody"];
                };
            };
            /** @description What went wrong. */
            default: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    "get-search": {
        parameters: {
            query?: never;
            header?: never;
            path: {
                /** @description The piece's id. */
                id: string;
                /** @description The id of a search. */
                search: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description OK */
            200: {
                headers: {
                    "Cache-Control"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["SearchBody"];
                };
            };
            /** @description What went wrong. */
            default: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    "cancel-search": {
        parameters: {
            query?: never;
            header?: never;
            path: {
                /** @description The piece's id. */
                id: string;
                /** @description The id of a search. */
                search: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description OK */
            200: {
                headers: {
                    "Cache-Control"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["SearchBody"];
                };
            };
            /** @description What went wrong. */
            default: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    "accept-layout": {
        parameters: {
            query?: {
                /** @description The tape to show lengths by, and to read those that are said without a unit; left out, the piece's own. */
                units?: "inch" | "metric";
            };
            header?: {
                /** @description Who writes or asks, 1 to 100 letters; left out, maker. */
                "X-Actor"?: string;
            };
            path: {
                /** @description The piece's id. */
                id: string;
                /** @description The id of a search. */
                search: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["AcceptInBody"];
            };
        };
        responses: {
            /** @description OK */
            200: {
                headers: {
                    "Cache-Control"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["WrittenBody"];
                };
            };
            /** @description What went wrong. */
            default: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    "compare-search": {
        parameters: {
            query?: {
                /** @description The tape to show lengths by, and to read those that are said without a unit; left out, the piece's own. */
                units?: "inch" | "metric";
            };
            header?: never;
            path: {
                /** @description The piece's id. */
                id: string;
                /** @description The id of a search. */
                search: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description OK */
            200: {
                headers: {
                    "Cache-Control"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["ComparedOutBody"];
                };
            };
            /** @description What went wrong. */
            default: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    "get-sizes": {
        parameters: {
            query?: {
                /** @description The tape to show lengths by; left out, the piece's own. */
                units?: "inch" | "metric";
            };
            header?: {
                /** @description The ETag that the asker has. */
                "If-None-Match"?: string;
            };
            path: {
                /** @description The piece's id. */
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description OK */
            200: {
                headers: {
                    "Cache-Control"?: string;
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["SizesBody"];
                };
            };
            /** @description What went wrong. */
            default: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    "get-solids": {
        parameters: {
            query?: {
                /** @description The tape to show lengths by; left out, the piece's own. */
                units?: "inch" | "metric";
            };
            header?: {
                /** @description The ETag that the asker has. */
                "If-None-Match"?: string;
            };
            path: {
                /** @description The piece's id. */
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description OK */
            200: {
                headers: {
                    "Cache-Control"?: string;
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["SolidsBody"];
                };
            };
            /** @description What went wrong. */
            default: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    take: {
        parameters: {
            query?: {
                /** @description The tape to show lengths by, and to read those that are said without a unit; left out, the piece's own. */
                units?: "inch" | "metric";
            };
            header?: {
                /** @description Who writes or asks, 1 to 100 letters; left out, maker. */
                "X-Actor"?: string;
            };
            path: {
                /** @description The piece's id. */
                id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["TakeInBody"];
            };
        };
        responses: {
            /** @description OK */
            200: {
                headers: {
                    "Cache-Control"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["WrittenBody"];
                };
            };
            /** @description What went wrong. */
            default: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    "get-text": {
        parameters: {
            query?: never;
            header?: never;
            path: {
                /** @description The piece's id. */
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description The document, UTF-8. */
            200: {
                headers: {
                    "Cache-Control"?: string;
                    "Content-Disposition"?: string;
                    "Content-Type"?: string;
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "text/plain": string;
                };
            };
            /** @description What went wrong. */
            default: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    "get-things": {
        parameters: {
            query?: {
                /** @description The tape to show lengths by, and to read those that are said without a unit; left out, the piece's own. */
                units?: "inch" | "metric";
            };
            header?: never;
            path: {
                /** @description The piece's id. */
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description OK */
            200: {
                headers: {
                    "Cache-Control"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["ThingsBody"];
                };
            };
            /** @description What went wrong. */
            default: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    weigh: {
        parameters: {
            query?: {
                /** @description The tape to show lengths by, and to read those that are said without a unit; left out, the piece's own. */
                units?: "inch" | "metric";
            };
            header?: never;
            path: {
                /** @description The piece's id. */
                id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["WeighInBody"];
            };
        };
        responses: {
            /** @description OK */
            200: {
                headers: {
                    "Cache-Control"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["WeighedBody"];
                };
            };
            /** @description What went wrong. */
            default: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    "ways-out": {
        parameters: {
            query?: {
                /** @description The tape to show lengths by, and to read those that are said without a unit; left out, the piece's own. */
                units?: "inch" | "metric";
            };
            header?: never;
            path: {
                /** @description The piece's id. */
                id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["WrongInBody"];
            };
        };
        responses: {
            /** @description OK */
            200: {
                headers: {
                    "Cache-Control"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["WrongBody"];
                };
            };
            /** @description What went wrong. */
            default: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    "get-yields": {
        parameters: {
            query: {
                /** @description The tape to show lengths by, and to read those that are said without a unit; left out, the piece's own. */
                units?: "inch" | "metric";
                /** @description The tag that is written on a board, stick or sheet that was bought. */
                stock: string;
                /** @description Where the first cut begins, from its end: 38 in; left out, at the end. */
                start?: string;
            };
            header?: never;
            path: {
                /** @description The piece's id. */
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description OK */
            200: {
                headers: {
                    "Cache-Control"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Yield"];
                };
            };
            /** @description What went wrong. */
            default: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
}

-- The orders of work that come with the program, ready to be used on a piece and changed freely. Minutes are quickest,
-- usual and longest for one garment, a competent maker and a domestic machine: common practice, from memory, not timed
-- in a workroom; a workroom's own record overrules them.

INSERT INTO work (id, position, name, note, ready) VALUES
    (1, 1, 'Lined bodice, set-in sleeve, light bones, hooks at back',
     'over the right corset; two-piece sleeve', 1),
    (2, 2, 'Shirt, full cut (historical squares and gussets, or plain modern)',
     'made from neck, chest, centre back to wrist; usually one fitting, with the coat', 1),
    (3, 3, 'Trousers, fly and waistband',
     'breeches: the same, and knee bands and buckles 60 minutes more, fall front 30 more', 1),
    (4, 4, 'Gathered skirt on a band', 'hem round 3.5 m', 1),
    (5, 5, 'Circle skirt', 'must hang before the hem is levelled', 1),
    (6, 6, 'Waistcoat, lined, welt pockets', 'fit over the shirt, under the coat', 1),
    (7, 7, 'Tailored coat (frock, tail or lounge)',
     'the longest garment in the room; felling and buttons go out, padding and collar do not', 1),
    (8, 8, 'Cape, half circle, lined',
     'fastening that comes away under a pull; length clear of stairs', 1),
    (9, 9, 'Gown: bodice and skirt, mounted, boned, trimmed',
     'toile only the bodice; trims can follow opening', 1),
    (10, 10, 'Day dress, unlined or half lined, zip', '1920s to now', 1),
    (11, 11, 'Doublet',
     'over the shirt; tie-points to breeches; often quilted or paned: 120 to 300 minutes more', 1),
    (12, 12, 'Corset or stays, busk or front lacing',
     'first thing made: everything else is fitted over it', 1),
    (13, 13, 'Petticoat with flounce', 'early: dance and movement rehearse in it', 1),
    (14, 14, 'Hooped petticoat', 'sit, doors, wings, dressing-room space to be tried early', 1),
    (15, 15, 'Leotard, unitard or dance base', 'zigzag or overlock; needs the body loop', 1),
    (16, 16, 'Apron', NULL, 1),
    (17, 17, 'Tabard, robe or tunic, unlined (often a set)',
     'for a set: each further one 0.4 of the minutes on cutting, 0.75 on machining, 0.8 on pressing', 1),
    (18, 18, 'Hat on a buckram or felt frame', 'head with the wig on', 1),
    (19, 19, 'Belly pad or body padding', 'before anything is cut to go over it', 1),
    (20, 20, 'Bought suit, altered', 'try-on decides whether it is kept', 1),
    (21, 21, 'Bought tights, socks, gloves, base layer', 'two or three pairs a performer for a run', 1),
    (22, 22, 'Shoes or boots, bought or hired', 'early: every hem waits for them', 1),
    (23, 23, 'From own stock, altered', 'let out only what its turnings allow', 1),
    (24, 24, 'Hired or borrowed costume', 'nothing cut; turnings tacked; back by a date, complete', 1),
    (25, 25, 'Quick-change rig on a finished garment',
     'after the change is timed in rehearsal; again after tech', 1),
    (26, 26, 'Breaking down (ageing) a finished piece', 'after the last fitting; never on a hired piece', 1);

-- Lined bodice, set-in sleeve, light bones, hooks at back
INSERT INTO work_step (id, work_id, position, key, title, kind, quickest, minutes, longest, after, level, rest_minutes,
                       can_wait, measures, note) VALUES
    (1, 1, 1, 'draft', 'adapt block, mark style lines', 'draft', 60, 120, 240,
     NULL, 3, NULL, 0, 'bust girth;waist girth;nape to waist;back width;arm length', NULL),
    (2, 1, 2, 'tcut', 'cut toile in calico', 'cut', 15, 25, 45, 'draft', 3, NULL, 0, NULL, NULL),
    (3, 1, 3, 'tsew', 'sew toile', 'machine', 30, 50, 90, 'tcut', 3, NULL, 0, NULL, NULL),
    (4, 1, 4, 'ftoile', 'toile fitting, over underpinnings', 'fit', 30, 45, 60, 'tsew', 3, NULL, 0, NULL, NULL),
    (5, 1, 5, 'corr', 'correct pattern, add inlays', 'draft', 30, 60, 120, 'ftoile', 3, NULL, 0, NULL, NULL),
    (6, 1, 6, 'cut', 'cut outer, mounting, lining', 'cut', 45, 75, 120, 'corr', 3, NULL, 0, NULL, NULL),
    (7, 1, 7, 'mount', 'mount outer to its backing', 'tack', 30, 60, 120, 'cut', 3, NULL, 0, NULL, NULL),
    (8, 1, 8, 'seams', 'body seams, darts, press as you go', 'machine', 45, 75, 120, 'mount', 3, NULL, 0, NULL, NULL),
    (9, 1, 9, 'slv', 'make sleeves, tack one in', 'machine', 40, 65, 110, 'seams', 3, NULL, 0, NULL, NULL),
    (10, 1, 10, 'f1', 'first fitting: waist, neck, sleeve pitch', 'fit', 30, 40, 60,
     'seams;slv', 3, NULL, 0, NULL, NULL),
    (11, 1, 11, 'alt', 'take in, re-cut neck and armhole, set both sleeves', 'machine', 40, 80, 160,
     'f1', 3, NULL, 0, NULL, NULL),
    (12, 1, 12, 'bones', 'bone casings, bones with ends covered', 'machine', 40, 70, 120,
     'alt', 3, NULL, 0, NULL, NULL),
    (13, 1, 13, 'line', 'line or face, back edges', 'machine', 45, 75, 120, 'bones', 3, NULL, 0, NULL, NULL),
    (14, 1, 14, 'f2', 'final fitting', 'fit', 15, 25, 40, 'line', 3, NULL, 0, NULL, NULL),
    (15, 1, 15, 'fell', 'fell lining at neck, waist, wrists', 'hand', 60, 100, 180, 'f2', 2, NULL, 0, NULL, NULL),
    (16, 1, 16, 'hooks', '12 hooks and bars, placket edge', 'hand', 60, 90, 140, 'f2', 2, NULL, 0, NULL, NULL),
    (17, 1, 17, 'off', 'press off, name tape', 'press', 15, 20, 30, 'fell;hooks', 3, NULL, 0, NULL, NULL);

-- Shirt, full cut (historical squares and gussets, or plain modern)
INSERT INTO work_step (id, work_id, position, key, title, kind, quickest, minutes, longest, after, level, rest_minutes,
                       can_wait, measures, note) VALUES
    (18, 2, 1, 'draft', 'draft: rectangles or shirt block', 'draft', 20, 35, 60,
     NULL, 3, NULL, 0, 'neck girth;nape to wrist', NULL),
    (19, 2, 2, 'cut', 'cut the shirt', 'cut', 30, 45, 75, 'draft', 3, NULL, 0, NULL, NULL),
    (20, 2, 3, 'body', 'shoulders, gussets, side seams', 'machine', 50, 80, 130, 'cut', 3, NULL, 0, NULL, NULL),
    (21, 2, 4, 'coll', 'make collar and cuffs, run the gathers', 'machine', 60, 100, 170,
     'cut', 3, NULL, 0, NULL, NULL),
    (22, 2, 5, 'slv', 'sleeves in, front opening', 'machine', 40, 70, 110, 'body', 3, NULL, 0, NULL, NULL),
    (23, 2, 6, 'join', 'set collar and cuffs', 'machine', 30, 50, 90, 'coll;slv', 3, NULL, 0, NULL, NULL),
    (24, 2, 7, 'fit', 'fitting: collar closes, sleeve length', 'fit', 10, 15, 25, 'join', 3, NULL, 0, NULL, NULL),
    (25, 2, 8, 'bh', 'buttonholes and buttons', 'machine', 20, 35, 60, 'fit', 3, NULL, 0, NULL, NULL),
    (26, 2, 9, 'hem', 'narrow hem', 'machine', 15, 25, 40, 'fit', 3, NULL, 0, NULL, NULL),
    (27, 2, 10, 'fell', 'fell inside of collar and cuffs', 'hand', 25, 50, 100, 'fit', 2, NULL, 0, NULL, NULL),
    (28, 2, 11, 'off', 'press, name tape', 'press', 15, 20, 30, 'bh;hem;fell', 3, NULL, 0, NULL, NULL);

-- Trousers, fly and waistband
INSERT INTO work_step (id, work_id, position, key, title, kind, quickest, minutes, longest, after, level, rest_minutes,
                       can_wait, measures, note) VALUES
    (29, 3, 1, 'draft', 'draft or adapt trousers', 'draft', 45, 90, 150,
     NULL, 3, NULL, 0, 'waist girth;hip girth;body rise;inside leg', NULL),
    (30, 3, 2, 'tcut', 'toile: cut and sew', 'machine', 40, 70, 110, 'draft', 3, NULL, 0, NULL, NULL),
    (31, 3, 3, 'ft', 'toile fitting (rise, seat; sit down in it)', 'fit', 20, 30, 40, 'tcut', 3, NULL, 0, NULL, NULL),
    (32, 3, 4, 'corr', 'correct pattern; 4 cm inlay at centre back', 'draft', 15, 35, 70,
     'ft', 3, NULL, 0, NULL, NULL),
    (33, 3, 5, 'cut', 'cut cloth, pocketing, band', 'cut', 30, 50, 80, 'corr', 3, NULL, 0, NULL, NULL),
    (34, 3, 6, 'pock', 'pockets', 'machine', 45, 80, 140, 'cut', 3, NULL, 0, NULL, NULL),
    (35, 3, 7, 'fly', 'make the fly', 'machine', 35, 60, 100, 'cut', 3, NULL, 0, NULL, NULL),
    (36, 3, 8, 'seams', 'legs and seat seams', 'machine', 35, 55, 90, 'pock;fly', 3, NULL, 0, NULL, NULL),
    (37, 3, 9, 'band', 'waistband', 'machine', 40, 65, 110, 'seams', 3, NULL, 0, NULL, NULL),
    (38, 3, 10, 'f1', 'fitting in the shoes: waist, hem', 'fit', 15, 25, 35, 'band', 3, NULL, 0, NULL, NULL),
    (39, 3, 11, 'alt', 'take in centre back', 'machine', 10, 25, 50, 'f1', 3, NULL, 0, NULL, NULL),
    (40, 3, 12, 'hem', 'hems by hand', 'hand', 25, 40, 60, 'f1', 2, NULL, 0, NULL, NULL),
    (41, 3, 13, 'fast', 'hook and bar, brace buttons', 'hand', 20, 35, 50, 'alt', 2, NULL, 0, NULL, NULL),
    (42, 3, 14, 'off', 'press creases, name tape', 'press', 20, 30, 45, 'hem;fast', 3, NULL, 0, NULL, NULL);

-- Gathered skirt on a band
INSERT INTO work_step (id, work_id, position, key, title, kind, quickest, minutes, longest, after, level, rest_minutes,
                       can_wait, measures, note) VALUES
    (43, 4, 1, 'draft', 'work out drops and band', 'draft', 10, 15, 25,
     NULL, 3, NULL, 0, 'waist girth;waist to floor', NULL),
    (44, 4, 2, 'cut', 'tear or cut drops', 'cut', 20, 35, 55, 'draft', 3, NULL, 0, NULL, NULL),
    (45, 4, 3, 'seams', 'seams and placket', 'machine', 30, 50, 85, 'cut', 3, NULL, 0, NULL, NULL),
    (46, 4, 4, 'gath', 'gather evenly, set to band', 'machine', 40, 70, 120, 'seams', 3, NULL, 0, NULL, NULL),
    (47, 4, 5, 'fit', 'fitting: length, in the shoes, over the petticoat', 'fit', 10, 20, 30,
     'gath', 3, NULL, 0, NULL, NULL),
    (48, 4, 6, 'hem', 'hem by hand', 'hand', 60, 105, 180, 'fit', 2, NULL, 0, NULL, 'by machine about 30 minutes'),
    (49, 4, 7, 'hook', 'hook and bar, stud', 'hand', 8, 12, 20, 'gath', 2, NULL, 0, NULL, NULL),
    (50, 4, 8, 'off', 'press, name tape', 'press', 15, 20, 30, 'hem;hook', 3, NULL, 0, NULL, NULL);

-- Circle skirt
INSERT INTO work_step (id, work_id, position, key, title, kind, quickest, minutes, longest, after, level, rest_minutes,
                       can_wait, measures, note) VALUES
    (51, 5, 1, 'draft', 'draft: radius and quarter template', 'draft', 15, 20, 40,
     NULL, 3, NULL, 0, 'waist girth', NULL),
    (52, 5, 2, 'cut', 'cut the circle; keep the grain the same on each piece', 'cut', 30, 50, 80,
     'draft', 3, NULL, 0, NULL, NULL),
    (53, 5, 3, 'seams', 'seams, zip', 'machine', 35, 55, 95, 'cut', 3, NULL, 0, NULL, NULL),
    (54, 5, 4, 'band', 'band, stay the waist', 'machine', 25, 40, 70, 'seams', 3, NULL, 0, NULL, NULL),
    (55, 5, 5, 'hang', 'hang on the stand', 'craft', 5, 5, 10, 'band', 3, 1440, 0, NULL, NULL),
    (56, 5, 6, 'fit', 'fitting: level the hem, in the shoes', 'fit', 20, 30, 45, 'hang', 3, NULL, 0, NULL, NULL),
    (57, 5, 7, 'hem', 'narrow machine hem, 5 m', 'machine', 35, 60, 100, 'fit', 3, NULL, 0, NULL, NULL),
    (58, 5, 8, 'hook', 'hook and bar', 'hand', 8, 10, 15, 'band', 2, NULL, 0, NULL, NULL),
    (59, 5, 9, 'off', 'press, name tape', 'press', 15, 20, 35, 'hem;hook', 3, NULL, 0, NULL, NULL);

-- Waistcoat, lined, welt pockets
INSERT INTO work_step (id, work_id, position, key, title, kind, quickest, minutes, longest, after, level, rest_minutes,
                       can_wait, measures, note) VALUES
    (60, 6, 1, 'draft', 'draft the waistcoat', 'draft', 40, 70, 120,
     NULL, 3, NULL, 0, 'waist girth;nape to waist', NULL),
    (61, 6, 2, 'tsew', 'toile: cut and sew', 'machine', 25, 45, 75, 'draft', 3, NULL, 0, NULL, NULL),
    (62, 6, 3, 'ft', 'toile fitting (with coat or trousers)', 'fit', 15, 25, 35, 'tsew', 3, NULL, 0, NULL, NULL),
    (63, 6, 4, 'corr', 'correct pattern', 'draft', 15, 25, 50, 'ft', 3, NULL, 0, NULL, NULL),
    (64, 6, 5, 'cut', 'cut fronts, back, lining, facings', 'cut', 35, 55, 90, 'corr', 3, NULL, 0, NULL, NULL),
    (65, 6, 6, 'int', 'interface fronts', 'press', 15, 25, 40, 'cut', 3, NULL, 0, NULL, NULL),
    (66, 6, 7, 'pock', 'front darts, welts and pockets', 'machine', 45, 75, 130, 'int', 3, NULL, 0, NULL, NULL),
    (67, 6, 8, 'make', 'seams, facings, bag out lining', 'machine', 55, 90, 150, 'pock', 3, NULL, 0, NULL, NULL),
    (68, 6, 9, 'f1', 'fitting over the shirt', 'fit', 10, 15, 25, 'make', 3, NULL, 0, NULL, NULL),
    (69, 6, 10, 'bh', '6 buttonholes by machine', 'machine', 20, 35, 60, 'f1', 3, NULL, 0, NULL, NULL),
    (70, 6, 11, 'hand', 'buttons, close lining, strap and buckle', 'hand', 40, 65, 110, 'bh', 2, NULL, 0, NULL, NULL),
    (71, 6, 12, 'off', 'press, name tape', 'press', 15, 25, 40, 'hand', 3, NULL, 0, NULL, NULL);

-- Tailored coat (frock, tail or lounge)
INSERT INTO work_step (id, work_id, position, key, title, kind, quickest, minutes, longest, after, level, rest_minutes,
                       can_wait, measures, note) VALUES
    (72, 7, 1, 'draft', 'draft the coat', 'draft', 120, 240, 400,
     NULL, 3, NULL, 0, 'waist girth;nape to waist;back width;arm length', NULL),
    (73, 7, 2, 'tsew', 'toile: cut and sew, one sleeve', 'machine', 80, 140, 230, 'draft', 3, NULL, 0, NULL, NULL),
    (74, 7, 3, 'ft', 'toile fitting, over waistcoat', 'fit', 40, 50, 70, 'tsew', 3, NULL, 0, NULL, NULL),
    (75, 7, 4, 'corr', 'correct pattern; turnings and inlays', 'draft', 45, 90, 170, 'ft', 3, NULL, 0, NULL, NULL),
    (76, 7, 5, 'cut', 'cut cloth, canvas, lining, pocketing', 'cut', 110, 170, 280, 'corr', 3, NULL, 0, NULL, NULL),
    (77, 7, 6, 'canv', 'make canvas, pad lapels', 'tack', 150, 270, 480, 'cut', 3, NULL, 0, NULL, NULL),
    (78, 7, 7, 'pock', 'pockets', 'machine', 80, 140, 230, 'cut', 3, NULL, 0, NULL, NULL),
    (79, 7, 8, 'baste', 'baste up with canvas in', 'tack', 60, 110, 180, 'canv;pock', 3, NULL, 0, NULL, NULL),
    (80, 7, 9, 'f1', 'first fitting, in the tacking', 'fit', 40, 50, 60, 'baste', 3, NULL, 0, NULL, NULL),
    (81, 7, 10, 'body', 'rip down, re-mark, sew body, face fronts', 'machine', 170, 270, 420,
     'f1', 3, NULL, 0, NULL, NULL),
    (82, 7, 11, 'coll', 'undercollar, top collar', 'tack', 90, 160, 260, 'body', 3, NULL, 0, NULL, NULL),
    (83, 7, 12, 'slv', 'sleeves: make, line, tack in', 'machine', 80, 140, 220, 'body', 3, NULL, 0, NULL, NULL),
    (84, 7, 13, 'f2', 'second fitting: collar, sleeve pitch and length', 'fit', 30, 40, 50,
     'coll;slv', 3, NULL, 0, NULL, NULL),
    (85, 7, 14, 'set', 'set sleeves, shoulder wadding', 'machine', 60, 100, 170, 'f2', 3, NULL, 0, NULL, NULL),
    (86, 7, 15, 'line', 'lining in by machine', 'machine', 60, 100, 160, 'f2', 3, NULL, 0, NULL, NULL),
    (87, 7, 16, 'fell', 'fell lining, hem, vents', 'hand', 90, 150, 260, 'set;line', 2, NULL, 0, NULL, NULL),
    (88, 7, 17, 'bh', '6 buttonholes by hand', 'hand', 60, 110, 200, 'f2', 3, NULL, 0, NULL, NULL),
    (89, 7, 18, 'btn', 'buttons', 'hand', 25, 40, 60, 'bh', 2, NULL, 0, NULL, NULL),
    (90, 7, 19, 'off', 'press off', 'press', 50, 80, 140, 'fell;btn', 3, NULL, 0, NULL, NULL);

-- Cape, half circle, lined
INSERT INTO work_step (id, work_id, position, key, title, kind, quickest, minutes, longest, after, level, rest_minutes,
                       can_wait, measures, note) VALUES
    (91, 8, 1, 'draft', 'draft: radius, collar', 'draft', 20, 30, 60, NULL, 3, NULL, 0, 'neck girth', NULL),
    (92, 8, 2, 'cut', 'cut outer and lining', 'cut', 40, 60, 95, 'draft', 3, NULL, 0, NULL, NULL),
    (93, 8, 3, 'seams', 'seams, collar', 'machine', 60, 95, 160, 'cut', 3, NULL, 0, NULL, NULL),
    (94, 8, 4, 'hang', 'hang outer and lining apart', 'craft', 5, 5, 10, 'seams', 3, 1440, 0, NULL, NULL),
    (95, 8, 5, 'fit', 'fitting: length, in the shoes, on the stairs used', 'fit', 10, 15, 25,
     'hang', 3, NULL, 0, NULL, NULL),
    (96, 8, 6, 'bag', 'join lining at front and neck', 'machine', 30, 50, 80, 'fit', 3, NULL, 0, NULL, NULL),
    (97, 8, 7, 'hem', 'hems by hand, 4 m, swing tacks', 'hand', 70, 120, 200, 'bag', 2, NULL, 0, NULL, NULL),
    (98, 8, 8, 'fast', 'come-away fastening behind the clasp', 'hand', 20, 30, 50, 'bag', 3, NULL, 0, NULL, NULL),
    (99, 8, 9, 'off', 'press, name tape', 'press', 20, 30, 45, 'hem;fast', 3, NULL, 0, NULL, NULL);

-- Gown: bodice and skirt, mounted, boned, trimmed
INSERT INTO work_step (id, work_id, position, key, title, kind, quickest, minutes, longest, after, level, rest_minutes,
                       can_wait, measures, note) VALUES
    (100, 9, 1, 'draft', 'draft bodice, sleeve, skirt', 'draft', 120, 210, 360,
     NULL, 3, NULL, 0, 'bust girth;waist girth;nape to waist;arm length;waist to floor', NULL),
    (101, 9, 2, 'tsew', 'bodice toile', 'machine', 60, 100, 170, 'draft', 3, NULL, 0, NULL, NULL),
    (102, 9, 3, 'ft', 'toile fitting, over corset and petticoat', 'fit', 40, 55, 75, 'tsew', 3, NULL, 0, NULL, NULL),
    (103, 9, 4, 'corr', 'correct pattern', 'draft', 40, 80, 150, 'ft', 3, NULL, 0, NULL, NULL),
    (104, 9, 5, 'cut', 'cut bodice, backing, sleeves, skirt, linings', 'cut', 90, 150, 240,
     'corr', 3, NULL, 0, NULL, NULL),
    (105, 9, 6, 'mount', 'mount bodice to backing', 'tack', 50, 90, 160, 'cut', 3, NULL, 0, NULL, NULL),
    (106, 9, 7, 'bod', 'bodice seams, bones', 'machine', 130, 210, 340, 'mount', 3, NULL, 0, NULL, NULL),
    (107, 9, 8, 'slv', 'sleeves, one tacked in', 'machine', 50, 85, 140, 'bod', 3, NULL, 0, NULL, NULL),
    (108, 9, 9, 'skt', 'skirt seams, placket', 'machine', 50, 85, 140, 'cut', 3, NULL, 0, NULL, NULL),
    (109, 9, 10, 'f1', 'first fitting', 'fit', 40, 50, 70, 'bod;slv;skt', 3, NULL, 0, NULL, NULL),
    (110, 9, 11, 'alt', 'alter bodice, set sleeves', 'machine', 60, 110, 190, 'f1', 3, NULL, 0, NULL, NULL),
    (111, 9, 12, 'join', 'gather or pleat skirt, set to bodice', 'machine', 60, 110, 180,
     'alt', 3, NULL, 0, NULL, NULL),
    (112, 9, 13, 'hang', 'hang on the stand', 'craft', 5, 5, 10, 'join', 3, 1440, 0, NULL, NULL),
    (113, 9, 14, 'f2', 'final fitting: hem and closing, in the shoes', 'fit', 30, 40, 60,
     'hang', 3, NULL, 0, NULL, NULL),
    (114, 9, 15, 'hem', 'hem with facing or braid', 'hand', 110, 180, 300, 'f2', 2, NULL, 0, NULL, NULL),
    (115, 9, 16, 'hook', 'hooks, or lacing eyelets', 'hand', 70, 110, 170, 'f2', 2, NULL, 0, NULL, NULL),
    (116, 9, 17, 'fell', 'fell linings', 'hand', 50, 85, 150, 'f2', 2, NULL, 0, NULL, NULL),
    (117, 9, 18, 'trim', 'sew trims on', 'hand', 90, 200, 420, 'f2', 2, NULL, 1, NULL, NULL),
    (118, 9, 19, 'off', 'press, name tape', 'press', 30, 45, 70, 'hem;hook;fell', 3, NULL, 0, NULL, NULL);

-- Day dress, unlined or half lined, zip
INSERT INTO work_step (id, work_id, position, key, title, kind, quickest, minutes, longest, after, level, rest_minutes,
                       can_wait, measures, note) VALUES
    (119, 10, 1, 'draft', 'adapt block or bought pattern', 'draft', 40, 75, 130,
     NULL, 3, NULL, 0, 'bust girth;waist girth;hip girth;nape to waist', NULL),
    (120, 10, 2, 'tsew', 'bodice toile', 'machine', 30, 50, 80, 'draft', 3, NULL, 0, NULL, NULL),
    (121, 10, 3, 'ft', 'toile fitting', 'fit', 20, 30, 40, 'tsew', 3, NULL, 0, NULL, NULL),
    (122, 10, 4, 'corr', 'correct pattern', 'draft', 15, 30, 60, 'ft', 3, NULL, 0, NULL, NULL),
    (123, 10, 5, 'cut', 'cut the dress', 'cut', 35, 55, 90, 'corr', 3, NULL, 0, NULL, NULL),
    (124, 10, 6, 'make', 'seams: bodice, skirt, sleeves', 'machine', 110, 180, 300, 'cut', 3, NULL, 0, NULL, NULL),
    (125, 10, 7, 'f1', 'fitting before zip', 'fit', 20, 30, 40, 'make', 3, NULL, 0, NULL, NULL),
    (126, 10, 8, 'zip', 'alter, zip in, facings on', 'machine', 40, 70, 120, 'f1', 3, NULL, 0, NULL, NULL),
    (127, 10, 9, 'f2', 'final fitting: hem, in the shoes', 'fit', 10, 15, 25, 'zip', 3, NULL, 0, NULL, NULL),
    (128, 10, 10, 'hem', 'hem by hand', 'hand', 40, 65, 110, 'f2', 2, NULL, 0, NULL, NULL),
    (129, 10, 11, 'tack', 'facings caught down, hook at zip', 'hand', 15, 25, 40, 'zip', 2, NULL, 0, NULL, NULL),
    (130, 10, 12, 'off', 'press, name tape', 'press', 15, 25, 40, 'hem;tack', 3, NULL, 0, NULL, NULL);

-- Doublet
INSERT INTO work_step (id, work_id, position, key, title, kind, quickest, minutes, longest, after, level, rest_minutes,
                       can_wait, measures, note) VALUES
    (131, 11, 1, 'draft', 'draft the doublet', 'draft', 90, 150, 240,
     NULL, 3, NULL, 0, 'waist girth;nape to waist;back width;arm length', NULL),
    (132, 11, 2, 'tsew', 'toile: cut and sew', 'machine', 50, 85, 140, 'draft', 3, NULL, 0, NULL, NULL),
    (133, 11, 3, 'ft', 'toile fitting (arms up, sword arm)', 'fit', 30, 40, 60, 'tsew', 3, NULL, 0, NULL, NULL),
    (134, 11, 4, 'corr', 'correct pattern', 'draft', 30, 55, 100, 'ft', 3, NULL, 0, NULL, NULL),
    (135, 11, 5, 'cut', 'cut outer, interlining, lining', 'cut', 60, 100, 160, 'corr', 3, NULL, 0, NULL, NULL),
    (136, 11, 6, 'mount', 'mount and pad', 'tack', 50, 100, 180, 'cut', 3, NULL, 0, NULL, NULL),
    (137, 11, 7, 'body', 'body seams', 'machine', 50, 85, 140, 'mount', 3, NULL, 0, NULL, NULL),
    (138, 11, 8, 'tabs', 'make skirts, wings, collar', 'machine', 90, 150, 240, 'cut', 3, NULL, 0, NULL, NULL),
    (139, 11, 9, 'slv', 'sleeves made', 'machine', 50, 85, 140, 'cut', 3, NULL, 0, NULL, NULL),
    (140, 11, 10, 'f1', 'first fitting', 'fit', 30, 40, 55, 'body;slv', 3, NULL, 0, NULL, NULL),
    (141, 11, 11, 'set', 'alter, set sleeves, skirts, wings, collar', 'machine', 80, 140, 230,
     'f1;tabs', 3, NULL, 0, NULL, NULL),
    (142, 11, 12, 'line', 'lining in', 'machine', 40, 65, 110, 'set', 3, NULL, 0, NULL, NULL),
    (143, 11, 13, 'fell', 'fell lining', 'hand', 60, 110, 190, 'line', 2, NULL, 0, NULL, NULL),
    (144, 11, 14, 'eyel', 'eyelets for points', 'hand', 60, 110, 200, 'line', 3, NULL, 0, NULL, NULL),
    (145, 11, 15, 'btn', '20 buttons with loops, or hooks behind', 'hand', 80, 150, 260,
     'line', 2, NULL, 0, NULL, NULL),
    (146, 11, 16, 'trim', 'sew braid on', 'hand', 80, 150, 300, 'line', 2, NULL, 1, NULL, NULL),
    (147, 11, 17, 'off', 'press, name tape', 'press', 20, 30, 45, 'fell;eyel;btn', 3, NULL, 0, NULL, NULL);

-- Corset or stays, busk or front lacing
INSERT INTO work_step (id, work_id, position, key, title, kind, quickest, minutes, longest, after, level, rest_minutes,
                       can_wait, measures, note) VALUES
    (148, 12, 1, 'draft', 'draft to corseted measures', 'draft', 60, 120, 200,
     NULL, 3, NULL, 0, 'bust girth;under-bust girth;waist girth', NULL),
    (149, 12, 2, 'tsew', 'toile with lacing strips and a few bones', 'machine', 45, 75, 120,
     'draft', 3, NULL, 0, NULL, NULL),
    (150, 12, 3, 'ft', 'toile fitting, laced; sit, sing, breathe', 'fit', 25, 40, 55, 'tsew', 3, NULL, 0, NULL, NULL),
    (151, 12, 4, 'corr', 'correct pattern', 'draft', 25, 45, 80, 'ft', 3, NULL, 0, NULL, NULL),
    (152, 12, 5, 'cut', 'cut coutil, lining', 'cut', 35, 55, 90, 'corr', 3, NULL, 0, NULL, NULL),
    (153, 12, 6, 'seams', 'seams and bone channels', 'machine', 130, 210, 340, 'cut', 3, NULL, 0, NULL, NULL),
    (154, 12, 7, 'busk', 'put in the busk, or face the front lacing', 'machine', 30, 45, 75,
     'seams', 3, NULL, 0, NULL, NULL),
    (155, 12, 8, 'eye', '26 metal eyelets', 'craft', 40, 60, 100, 'seams', 3, NULL, 0, NULL, NULL),
    (156, 12, 9, 'bones', 'cut, tip, put in bones', 'craft', 40, 70, 120, 'seams', 3, NULL, 0, NULL, NULL),
    (157, 12, 10, 'f1', 'fitting, laced', 'fit', 15, 25, 35, 'busk;eye;bones', 3, NULL, 0, NULL, NULL),
    (158, 12, 11, 'bind', 'bind edges, fell inside', 'hand', 60, 100, 170, 'f1', 2, NULL, 0, NULL, NULL),
    (159, 12, 12, 'off', 'lace, name tape', 'hand', 10, 15, 25, 'bind', 2, NULL, 0, NULL, NULL);

-- Petticoat with flounce
INSERT INTO work_step (id, work_id, position, key, title, kind, quickest, minutes, longest, after, level, rest_minutes,
                       can_wait, measures, note) VALUES
    (160, 13, 1, 'draft', 'work out drops and tiers', 'draft', 10, 15, 25,
     NULL, 3, NULL, 0, 'waist girth;waist to floor', NULL),
    (161, 13, 2, 'cut', 'tear or cut strips', 'cut', 20, 35, 55, 'draft', 3, NULL, 0, NULL, NULL),
    (162, 13, 3, 'seams', 'seams, gather tiers', 'machine', 50, 90, 150, 'cut', 3, NULL, 0, NULL, NULL),
    (163, 13, 4, 'waist', 'drawstring or band', 'machine', 20, 30, 50, 'seams', 3, NULL, 0, NULL, NULL),
    (164, 13, 5, 'fit', 'fitting: length under the skirt, in the shoes', 'fit', 5, 10, 15,
     'waist', 3, NULL, 0, NULL, NULL),
    (165, 13, 6, 'hem', 'hem by machine', 'machine', 25, 40, 65, 'fit', 3, NULL, 0, NULL, NULL),
    (166, 13, 7, 'off', 'press, name tape', 'press', 10, 15, 25, 'hem', 3, NULL, 0, NULL, NULL);

-- Hooped petticoat
INSERT INTO work_step (id, work_id, position, key, title, kind, quickest, minutes, longest, after, level, rest_minutes,
                       can_wait, measures, note) VALUES
    (167, 14, 1, 'draft', 'draft shape and hoop lengths', 'draft', 30, 50, 90,
     NULL, 3, NULL, 0, 'waist girth;waist to floor', NULL),
    (168, 14, 2, 'cut', 'cut panels and casings', 'cut', 20, 30, 50, 'draft', 3, NULL, 0, NULL, NULL),
    (169, 14, 3, 'seams', 'seams, casings, waist', 'machine', 80, 130, 210, 'cut', 3, NULL, 0, NULL, NULL),
    (170, 14, 4, 'hoop', 'cut hoops, cover ends, put in', 'craft', 40, 65, 110, 'seams', 3, NULL, 0, NULL, NULL),
    (171, 14, 5, 'fit', 'fitting: hang and balance on the body, sit', 'fit', 15, 20, 30,
     'hoop', 3, NULL, 0, NULL, NULL),
    (172, 14, 6, 'adj', 'adjust tapes and hoops', 'hand', 20, 40, 80, 'fit', 3, NULL, 0, NULL, NULL),
    (173, 14, 7, 'off', 'close casings, name tape', 'hand', 20, 30, 50, 'adj', 2, NULL, 0, NULL, NULL);

-- Leotard, unitard or dance base
INSERT INTO work_step (id, work_id, position, key, title, kind, quickest, minutes, longest, after, level, rest_minutes,
                       can_wait, measures, note) VALUES
    (174, 15, 1, 'draft', 'draft to stretch', 'draft', 30, 50, 90,
     NULL, 3, NULL, 0, 'waist girth;hip girth;trunk girth', NULL),
    (175, 15, 2, 'cut', 'cut with the stretch round the body', 'cut', 20, 30, 45, 'draft', 3, NULL, 0, NULL, NULL),
    (176, 15, 3, 'sew', 'seams, zigzag or overlock', 'machine', 50, 80, 130, 'cut', 3, NULL, 0, NULL, NULL),
    (177, 15, 4, 'fit', 'fitting, moving in it', 'fit', 15, 20, 30, 'sew', 3, NULL, 0, NULL, NULL),
    (178, 15, 5, 'el', 'elastics, alter', 'machine', 35, 60, 100, 'fit', 3, NULL, 0, NULL, NULL),
    (179, 15, 6, 'close', 'fastening, straps', 'hand', 15, 25, 45, 'el', 2, NULL, 0, NULL, NULL),
    (180, 15, 7, 'off', 'name tape', 'hand', 5, 5, 10, 'close', 2, NULL, 0, NULL, NULL);

-- Apron
INSERT INTO work_step (id, work_id, position, key, title, kind, quickest, minutes, longest, after, level, rest_minutes,
                       can_wait, measures, note) VALUES
    (181, 16, 1, 'cut', 'cut apron, pocket, band', 'cut', 12, 20, 30, NULL, 3, NULL, 0, NULL, NULL),
    (182, 16, 2, 'sew', 'hem edges, pocket', 'machine', 20, 35, 60, 'cut', 3, NULL, 0, NULL, NULL),
    (183, 16, 3, 'band', 'band and ties', 'machine', 20, 30, 50, 'sew', 3, NULL, 0, NULL, NULL),
    (184, 16, 4, 'off', 'press, name tape', 'press', 8, 12, 20, 'band', 3, NULL, 0, NULL, NULL);

-- Tabard, robe or tunic, unlined (often a set)
INSERT INTO work_step (id, work_id, position, key, title, kind, quickest, minutes, longest, after, level, rest_minutes,
                       can_wait, measures, note) VALUES
    (185, 17, 1, 'draft', 'draft one shape in three sizes', 'draft', 20, 40, 70, NULL, 3, NULL, 0, NULL, NULL),
    (186, 17, 2, 'cut', 'cut tabard or tunic', 'cut', 20, 30, 50, 'draft', 3, NULL, 0, NULL, NULL),
    (187, 17, 3, 'sew', 'seams, neck facing', 'machine', 45, 70, 115, 'cut', 3, NULL, 0, NULL, NULL),
    (188, 17, 4, 'fit', 'fitting: length and neck', 'fit', 5, 10, 15, 'sew', 3, NULL, 0, NULL, NULL),
    (189, 17, 5, 'hem', 'hems by machine', 'machine', 20, 30, 50, 'fit', 3, NULL, 0, NULL, NULL),
    (190, 17, 6, 'off', 'press, name tape', 'press', 10, 15, 25, 'hem', 3, NULL, 0, NULL, NULL);

-- Hat on a buckram or felt frame
INSERT INTO work_step (id, work_id, position, key, title, kind, quickest, minutes, longest, after, level, rest_minutes,
                       can_wait, measures, note) VALUES
    (191, 18, 1, 'draft', 'draft the shape in paper', 'draft', 30, 60, 110, NULL, 3, NULL, 0, 'head girth', NULL),
    (192, 18, 2, 'frame', 'cut frame, wire edges (felt: block it)', 'craft', 60, 110, 190,
     'draft', 3, 720, 0, NULL, NULL),
    (193, 18, 3, 'fit', 'try on over the wig', 'fit', 5, 10, 15, 'frame', 3, NULL, 0, NULL, NULL),
    (194, 18, 4, 'cover', 'cover crown and brim', 'craft', 80, 140, 240, 'fit', 3, NULL, 0, NULL, NULL),
    (195, 18, 5, 'head', 'headband, lining, comb loops', 'hand', 30, 50, 80, 'cover', 3, NULL, 0, NULL, NULL),
    (196, 18, 6, 'trim', 'trims, feathers', 'craft', 30, 75, 160, 'head', 3, NULL, 1, NULL, NULL),
    (197, 18, 7, 'off', 'name tape, box', 'hand', 5, 10, 15, 'head', 2, NULL, 0, NULL, NULL);

-- Belly pad or body padding
INSERT INTO work_step (id, work_id, position, key, title, kind, quickest, minutes, longest, after, level, rest_minutes,
                       can_wait, measures, note) VALUES
    (198, 19, 1, 'draft', 'draft base garment from block', 'draft', 20, 35, 60, NULL, 3, NULL, 0, NULL, NULL),
    (199, 19, 2, 'base', 'cut and sew base', 'machine', 50, 80, 130, 'draft', 3, NULL, 0, NULL, NULL),
    (200, 19, 3, 'pad', 'build up padding in layers, shape it', 'craft', 60, 120, 210, 'base', 3, NULL, 0, NULL, NULL),
    (201, 19, 4, 'fit', 'fitting on the body: move, sit, heat', 'fit', 15, 25, 40, 'pad', 3, NULL, 0, NULL, NULL),
    (202, 19, 5, 'adj', 'carve, cover, fastening', 'hand', 40, 75, 140, 'fit', 3, NULL, 0, NULL, NULL),
    (203, 19, 6, 'wash', 'washable or changeable lining, name tape', 'machine', 15, 30, 60,
     'adj', 3, NULL, 0, NULL, NULL);

-- Bought suit, altered
INSERT INTO work_step (id, work_id, position, key, title, kind, quickest, minutes, longest, after, level, rest_minutes,
                       can_wait, measures, note) VALUES
    (204, 20, 1, 'buy', 'find, buy, keep the receipt', 'source', 30, 60, 150,
     NULL, 3, NULL, 0, 'waist girth;inside leg', NULL),
    (205, 20, 2, 'f1', 'try on, pin, chalk', 'fit', 15, 25, 40, 'buy', 3, NULL, 0, NULL, NULL),
    (206, 20, 3, 'waist', 'take in or let out waist and seat', 'machine', 25, 45, 75, 'f1', 3, NULL, 0, NULL, NULL),
    (207, 20, 4, 'slv', 'shorten sleeves', 'machine', 40, 75, 130, 'f1', 3, NULL, 0, NULL, NULL),
    (208, 20, 5, 'leg', 'unpick trouser hems, re-mark, cut to length', 'cut', 10, 20, 30,
     'f1', 3, NULL, 0, NULL, NULL),
    (209, 20, 6, 'fell', 'hems, sleeve lining felled', 'hand', 35, 60, 100, 'slv;leg', 2, NULL, 0, NULL, NULL),
    (210, 20, 7, 'f2', 'check fitting in the shoes', 'fit', 5, 10, 15, 'fell;waist', 3, NULL, 0, NULL, NULL),
    (211, 20, 8, 'off', 'press, name tape over the shop label', 'press', 20, 25, 40, 'f2', 3, NULL, 0, NULL, NULL);

-- Bought tights, socks, gloves, base layer
INSERT INTO work_step (id, work_id, position, key, title, kind, quickest, minutes, longest, after, level, rest_minutes,
                       can_wait, measures, note) VALUES
    (212, 21, 1, 'buy', 'order by height, inside leg or hand', 'source', 10, 20, 45, NULL, 3, NULL, 0, NULL, NULL),
    (213, 21, 2, 'fit', 'try on', 'fit', 5, 5, 10, 'buy', 3, NULL, 0, NULL, NULL),
    (214, 21, 3, 'dye', 'dye to match, test first', 'dye', 40, 70, 120, 'fit', 3, 720, 0, NULL, NULL),
    (215, 21, 4, 'alt', 'waist elastic, loops, microphone opening', 'hand', 10, 20, 40, 'dye', 2, NULL, 0, NULL, NULL),
    (216, 21, 5, 'off', 'name tape', 'hand', 3, 5, 10, 'alt', 2, NULL, 0, NULL, NULL);

-- Shoes or boots, bought or hired
INSERT INTO work_step (id, work_id, position, key, title, kind, quickest, minutes, longest, after, level, rest_minutes,
                       can_wait, measures, note) VALUES
    (217, 22, 1, 'ask', 'ask for foot tracing, size, what is danced', 'source', 5, 10, 15,
     NULL, 3, NULL, 0, NULL, NULL),
    (218, 22, 2, 'get', 'find, order or hire', 'source', 20, 50, 150, 'ask', 3, NULL, 0, 'foot length', NULL),
    (219, 22, 3, 'fit', 'try on, both feet, stairs and dance', 'fit', 5, 10, 20, 'get', 3, NULL, 0, NULL, NULL),
    (220, 22, 4, 'sole', 'rubber on sole and heel', 'craft', 20, 35, 60, 'fit', 3, 1440, 0, NULL, NULL),
    (221, 22, 5, 'col', 'clean, dye or paint', 'craft', 20, 50, 100, 'fit', 3, 720, 0, NULL, NULL),
    (222, 22, 6, 'lace', 'elastic laces, insoles, heel grips', 'hand', 10, 15, 30, 'fit', 2, NULL, 0, NULL, NULL),
    (223, 22, 7, 'off', 'name inside', 'hand', 2, 5, 5, 'sole;col;lace', 2, NULL, 0, NULL, NULL);

-- From own stock, altered
INSERT INTO work_step (id, work_id, position, key, title, kind, quickest, minutes, longest, after, level, rest_minutes,
                       can_wait, measures, note) VALUES
    (224, 23, 1, 'pull', 'search rail, take three to try', 'source', 10, 25, 60, NULL, 3, NULL, 0, NULL, NULL),
    (225, 23, 2, 'chk', 'look over: seams, moth, zip, smell; wash', 'craft', 15, 25, 50,
     'pull', 3, 720, 0, NULL, NULL),
    (226, 23, 3, 'fit', 'try on, choose, pin', 'fit', 10, 20, 30, 'chk', 3, NULL, 0, NULL, NULL),
    (227, 23, 4, 'alt', 'alter, leaving inlays in', 'machine', 20, 60, 180, 'fit', 3, NULL, 0, NULL, NULL),
    (228, 23, 5, 'mend', 'mend, replace fastenings', 'hand', 10, 30, 90, 'fit', 2, NULL, 0, NULL, NULL),
    (229, 23, 6, 'f2', 'check fitting', 'fit', 5, 10, 15, 'alt;mend', 3, NULL, 0, NULL, NULL),
    (230, 23, 7, 'off', 'press, new name tape, stock card', 'press', 10, 15, 25, 'f2', 3, NULL, 0, NULL, NULL);

-- Hired or borrowed costume
INSERT INTO work_step (id, work_id, position, key, title, kind, quickest, minutes, longest, after, level, rest_minutes,
                       can_wait, measures, note) VALUES
    (231, 24, 1, 'ask', 'enquiry with measures and dates', 'source', 15, 30, 60,
     NULL, 3, NULL, 0, 'height;waist girth;hip girth', NULL),
    (232, 24, 2, 'get', 'collect, check against the list, photograph faults', 'source', 20, 40, 90,
     'ask', 3, NULL, 0, NULL, NULL),
    (233, 24, 3, 'fit', 'try on everything', 'fit', 15, 20, 35, 'get', 3, NULL, 0, NULL, NULL),
    (234, 24, 4, 'alt', 'tacked alterations only, big stitches', 'hand', 15, 40, 90, 'fit', 2, NULL, 0, NULL, NULL),
    (235, 24, 5, 'off', 'press, pinned or tied tag', 'press', 10, 15, 25, 'alt', 3, NULL, 0, NULL, NULL),
    (236, 24, 6, 'back', 'after closing: unpick, list, pack, return', 'source', 20, 40, 75,
     'off', 3, NULL, 1, NULL, NULL);

-- Quick-change rig on a finished garment
INSERT INTO work_step (id, work_id, position, key, title, kind, quickest, minutes, longest, after, level, rest_minutes,
                       can_wait, measures, note) VALUES
    (237, 25, 1, 'plan', 'watch the change, decide with dresser and stage manager', 'fit', 10, 20, 30,
     NULL, 3, NULL, 0, NULL, NULL),
    (238, 25, 2, 'rip', 'open the seam, take off fastenings', 'hand', 10, 25, 45, 'plan', 3, NULL, 0, NULL, NULL),
    (239, 25, 3, 'rig', 'zip, tape or studs behind; join the layers', 'machine', 40, 75, 140,
     'rip', 3, NULL, 0, NULL, NULL),
    (240, 25, 4, 'false', 'false buttons and bows on top', 'hand', 20, 40, 75, 'rig', 2, NULL, 0, NULL, NULL),
    (241, 25, 5, 'lace', 'elastic in laces, cuffs, braces', 'hand', 10, 20, 40, 'rip', 2, NULL, 0, NULL, NULL),
    (242, 25, 6, 'try', 'practise with dresser, timed, in costume', 'fit', 15, 20, 40,
     'false;lace', 3, NULL, 0, NULL, NULL),
    (243, 25, 7, 'adj', 'adjust what the practice showed', 'hand', 10, 25, 60, 'try', 3, NULL, 0, NULL, NULL);

-- Breaking down (ageing) a finished piece
INSERT INTO work_step (id, work_id, position, key, title, kind, quickest, minutes, longest, after, level, rest_minutes,
                       can_wait, measures, note) VALUES
    (244, 26, 1, 'test', 'test on an offcut or inside turning', 'dye', 15, 30, 60, NULL, 3, 720, 0, NULL, NULL),
    (245, 26, 2, 'abr', 'wear: edges, knees, pockets', 'dye', 25, 60, 120, 'test', 3, NULL, 0, NULL, NULL),
    (246, 26, 3, 'col', 'dye, spray, paint in layers', 'dye', 40, 90, 180, 'abr', 3, 1440, 0, NULL, NULL),
    (247, 26, 4, 'look', 'designer looks, under stage light', 'fit', 5, 15, 20, 'col', 3, NULL, 0, NULL, NULL),
    (248, 26, 5, 'fix', 'more where asked, heat-set, rinse, air', 'dye', 20, 45, 90, 'look', 3, 720, 0, NULL, NULL),
    (249, 26, 6, 'off', 'press; safe to wear: dry, no smell, allergies asked', 'press', 5, 10, 20,
     'fix', 3, NULL, 0, NULL, NULL);

PRAGMA user_version = 3;
